import type { Bench } from '../../../bench/bench.ts';
import type { Body, Kind } from '../../../bench/events/index.ts';
import type { Model } from '../../../bench/models/index.ts';
import type { ItemFile } from '../../../bench/views/index.ts';
import { formatMinor } from '../../../core/quantity/index.ts';
import type { RandomStream } from '../../../core/numeric/index.ts';
import type { HiddenTruth } from './hidden-truth.ts';
import type { SeededClock } from './seeded-clock.ts';

/** What the walk has at hand: a bench, a clock, chance, the hidden truth, and a voice. */
export interface Workplace {
  readonly bench: Bench;
  readonly models: ReadonlyMap<string, Model>;
  readonly clock: SeededClock;
  readonly random: RandomStream;
  readonly truth: HiddenTruth;
  readonly say: (line: string) => void;
}

type Draft<K extends Kind> = Partial<Body<K>> & Record<string, unknown>;

/** Records one event; a refusal ends the walk, for the walk only does what the job allows. */
export function note<K extends Kind>({ bench }: Workplace, kind: K, body: Draft<K>): void {
  const result = bench.record([{ kind, body }]);
  if (!result.ok) throw new Error(`The bench refused ${kind}: ${result.message} (${result.field}).`);
}

export function fileOf({ bench }: Workplace, itemId: string): ItemFile {
  return bench.item(itemId)!;
}

export const modelOf = ({ models }: Workplace, file: ItemFile): Model => models.get(file.model.id)!;

export const pounds = ({ bench }: Workplace, minor: number): string => {
  const { currency } = bench.state().settings;
  return `${formatMinor(Math.round(minor), currency)} ${currency}`;
};

export const percentText = (chance: number): string => `${Math.round(100 * chance)} %`;

const MOST_REASONS = 2;

/** A decision and its reasons, in the words of the bench. */
export function decide({ say }: Workplace, what: string, why: readonly string[]): void {
  say(`  Decided: ${what}`);
  for (const reason of why.filter((line) => line !== '').slice(0, MOST_REASONS)) say(`    because ${lowerFirst(reason)}`);
}

const lowerFirst = (text: string): string => (/^[A-Z][a-z]/.test(text) ? text.charAt(0).toLowerCase() + text.slice(1) : text);

/** A factor about 1 with a standard deviation of `spread` in its logarithm, close to log-normal (sum of four uniforms). */
export const factor = (spread: number, random: RandomStream): number =>
  Math.exp(spread * Math.sqrt(3) * (random() + random() + random() + random() - 2));
