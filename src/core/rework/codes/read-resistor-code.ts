import { eSeries, seriesOf, tidy } from './e-series.ts';
import { TOLERANCES } from './tolerance.ts';

/** One way to read a mark. */
export interface CodeReading {
  /** Ω, F, or H. */
  readonly value: number;
  readonly notation: '3-digit' | '4-digit' | 'letter-for-point' | 'eia-96' | 'jumper' | 'capacitor-3-digit';
  /** Share above and below, or null when the mark does not say it. */
  readonly tolerance: number | null;
  /** For a capacitor below 10 pF, F above and below in place of a share. */
  readonly toleranceF?: number;
  /** V, where a voltage code stands before it. */
  readonly volts?: number;
  readonly why: string;
}

export type CodeAnswer =
  | { readonly ok: true; readonly readings: readonly CodeReading[] }
  | { readonly ok: false; readonly code: 'not-a-code'; readonly why: string };

/** Multipliers of EIA-96; some makers use the second letter of a pair. */
export const EIA_96: Readonly<Record<string, number>> = {
  Z: 0.001,
  Y: 0.01,
  R: 0.01,
  X: 0.1,
  S: 0.1,
  A: 1,
  B: 10,
  H: 10,
  C: 100,
  D: 1_000,
  E: 10_000,
  F: 100_000,
};

const MULTIPLIER: Readonly<Record<string, number>> = { R: 1, E: 1, L: 1e-3, m: 1e-3, K: 1e3, k: 1e3, M: 1e6, G: 1e9 };

/**
 * Everything that the mark on a resistor can mean, likeliest first: three or four digits, a letter in the place of the
 * point (IEC 60062), EIA-96. A mark that can be read twice is read twice: "12R" is 12 Ω by the one and 1.30 Ω by the other.
 */
export function readResistorCode(mark: string): CodeAnswer {
  const text = mark
    .trim()
    .replace(/[Ωω]|ohms?$/giu, '')
    .trim();
  const readings = [jumper(text), ...letterForPoint(text), digits(text), eia96(text)].filter((each) => each !== null);
  if (readings.length > 0) return { ok: true, readings };
  return {
    ok: false,
    code: 'not-a-code',
    why: 'It is neither three or four digits, nor digits with R, K or M for the point, nor two digits and a letter of EIA-96.',
  };
}

const jumper = (text: string): CodeReading | null =>
  /^0{1,4}$/.test(text) ? { value: 0, notation: 'jumper', tolerance: null, why: 'All noughts: a bridge of 0 Ω.' } : null;

function digits(text: string): CodeReading | null {
  const match = /^(\d{2,3})(\d)([BCDFGJKM])?$/.exec(text);
  if (!match || /^0+$/.test(text)) return null;
  const [, figures, exponent, letter] = match;
  const value = tidy(Number(figures) * 10 ** Number(exponent));
  if (value === 0) return null;
  const four = figures!.length === 3;
  const tolerance = letter ? TOLERANCES[letter]! : four ? 0.01 : 0.05;
  return {
    value,
    notation: four ? '4-digit' : '3-digit',
    tolerance,
    why: `${figures} × 10^${exponent}${letter ? '' : `; ${four ? 'four digits are usually 1 %' : 'three digits are usually 5 %'}`}${oddly(value)}.`,
  };
}

/** A value outside every series is worth a second look: the mark may stand on its head. */
const oddly = (value: number): string => (seriesOf(value) === null ? '; no usual value, is it upside down' : '');

function letterForPoint(text: string): CodeReading[] {
  const match = /^(\d*)([RELmKkMG])(\d*)([BCDFGJKM])?$/.exec(text);
  if (!match || (match[1] === '' && match[3] === '')) return [];
  const [, whole, letter, part, tolerance] = match;
  const value = tidy(Number(`${whole || '0'}.${part || '0'}`) * MULTIPLIER[letter!]!);
  if (value === 0) return [];
  return [
    {
      value,
      notation: 'letter-for-point',
      tolerance: tolerance ? TOLERANCES[tolerance]! : null,
      why: `${letter} stands for the point${letter === 'R' || letter === 'E' ? '' : ` and for × ${MULTIPLIER[letter!]}`}.`,
    },
  ];
}

function eia96(text: string): CodeReading | null {
  const match = /^(\d{2})([A-Z])$/.exec(text);
  const place = Number(match?.[1] ?? 0);
  const multiplier = EIA_96[match?.[2] ?? ''];
  if (!match || place < 1 || place > 96 || multiplier === undefined) return null;
  const value = tidy(eSeries('E96')[place - 1]! * 100 * multiplier);
  return { value, notation: 'eia-96', tolerance: 0.01, why: `EIA-96: value ${place} of E96, times ${multiplier} for ${match[2]}.` };
}
