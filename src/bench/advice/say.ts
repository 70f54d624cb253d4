import { formatMinor } from '../../core/quantity/index.ts';
import type { Claim } from '../events/index.ts';
import { spaced } from '../log-words.ts';
import type { Model } from '../models/index.ts';

/** "12.50 GBP" for minor units, rounded to whole ones. */
export const money = (minor: number, currency: string): string => `${formatMinor(whole(minor), currency)} ${currency}`;

/** Whole minor units, never minus zero. */
export const whole = (minor: number): number => Math.round(minor) + 0;

/** "37 %"; small and great chances are not rounded to nothing or to certainty. */
export function percent(chance: number): string {
  if (chance > 0 && chance < 0.005) return 'under 1 %';
  if (chance < 1 && chance > 0.995) return 'over 99 %';
  return `${Math.round(chance * 100)} %`;
}

/** "25 min". */
export const minutesText = (minutes: number): string => `${Math.round(minutes * 10) / 10} min`;

const UNIT = { volts: 'V', ohms: 'Ω', diode: 'V', amps: 'A' } as const;

/** A meter's reading in words: "3.28 V", "OL" for null, "0.52 V drop" in diode mode. */
export function reading(value: number | null, mode: keyof typeof UNIT): string {
  if (value === null) return 'OL';
  return `${Number(value.toPrecision(4))} ${UNIT[mode]}${mode === 'diode' ? ' drop' : ''}`;
}

type Named = { readonly id: string; readonly name: string };

const nameIn = (list: readonly Named[], id: string): string => list.find((thing) => thing.id === id)?.name ?? id;

export const faultName = (model: Model, id: string): string => nameIn(model.file.faults, id);
export const blockName = (model: Model, id: string): string => nameIn(model.file.blocks, id);
export const functionName = (model: Model, id: string): string => nameIn(model.file.functions, id);
export const pointName = (model: Model, id: string): string => nameIn(model.file.points, id);
export const accessoryName = (model: Model, id: string): string => nameIn(model.file.accessories, id);
export const partName = (model: Model, id: string): string => nameIn(model.file.parts, id);
export const slotName = (model: Model, id: string): string => nameIn(model.file.slots, id);
export const remedyName = (model: Model, id: string): string => nameIn(model.file.remedies, id);

/** "Sound fails", "Shell: cracked", "untested". */
export function claimSaid(model: Model, claim: Claim): string {
  if (claim.about === 'untested') return 'untested';
  if (claim.about === 'place') return `${blockName(model, claim.place)}: ${spaced(claim.sees)}`;
  return `${functionName(model, claim.function)} ${spaced(claim.says)}`;
}

/** "a", "a and b", "a, b and c". */
export const listed = (things: readonly string[]): string =>
  things.length < 2 ? (things[0] ?? '') : `${things.slice(0, -1).join(', ')} and ${things.at(-1)}`;

/** Small first letter, unless the word is an abbreviation such as "LED" or "VSYS". */
export const lower = (name: string): string => (/^[A-Z][^A-Z0-9]/.test(name) ? name.charAt(0).toLowerCase() + name.slice(1) : name);

/** Great first letter, for the beginning of a sentence. */
export const upper = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
