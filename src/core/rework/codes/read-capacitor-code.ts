import { tidy } from './e-series.ts';
import type { CodeAnswer, CodeReading } from './read-resistor-code.ts';
import { SMALL_TOLERANCES, TOLERANCES } from './tolerance.ts';

/** V by figure and letter, EIA-198; from memory. The figure is the power of ten. */
const VOLT_LETTERS: Readonly<Record<string, number>> = {
  A: 1,
  B: 1.25,
  C: 1.6,
  D: 2,
  E: 2.5,
  F: 3.15,
  G: 4,
  H: 5,
  J: 6.3,
  K: 8,
  V: 3.5,
};

/** V of a code such as 1H (50 V) or 0J (6.3 V); undefined when it is none. */
export function voltsOfCode(code: string): number | undefined {
  const match = /^([0-3])([A-Z])$/.exec(code);
  const base = VOLT_LETTERS[match?.[2] ?? ''];
  return match && base !== undefined ? tidy(base * 10 ** Number(match[1])) : undefined;
}

const UNITS: Readonly<Record<string, number>> = { p: 1e-12, n: 1e-9, u: 1e-6, µ: 1e-6, m: 1e-3 };

/**
 * What the mark on a capacitor means, F: two digits and the power of ten in pF (EIA-198; 8 is × 0.01, 9 is × 0.1), or a
 * letter in the place of the point (IEC 60062: 4n7). A voltage code may stand before it, a tolerance letter behind.
 */
export function readCapacitorCode(mark: string): CodeAnswer {
  const text = mark.trim().replace(/\s+/g, '');
  const match = /^([0-3][A-Z])?(.+)$/.exec(text);
  const volts = voltsOfCode(match?.[1] ?? '');
  const rest = volts === undefined ? text : match![2]!;
  const reading = threeDigits(rest) ?? letterForPoint(rest);
  if (reading) return { ok: true, readings: [volts === undefined ? reading : { ...reading, volts }] };
  return { ok: false, code: 'not-a-code', why: 'It is neither three digits nor digits with p, n or µ for the point.' };
}

function threeDigits(text: string): CodeReading | null {
  const match = /^(\d{2})(\d)([A-Z])?$/.exec(text);
  if (!match || match[2] === '7') return null;
  const [, figures, digit, letter] = match;
  const power = digit === '8' ? -2 : digit === '9' ? -1 : Number(digit);
  const value = tidy(Number(figures) * 10 ** power * 1e-12);
  const tolerance = toleranceOf(value, letter);
  if (value === 0 || !tolerance) return null;
  return { value, notation: 'capacitor-3-digit', ...tolerance, why: `${figures} × ${10 ** power} pF.` };
}

function letterForPoint(text: string): CodeReading | null {
  const match = /^(\d*)([pnuµm])(\d*)([A-Z])?$/.exec(text);
  if (!match || (match[1] === '' && match[3] === '')) return null;
  const value = tidy(Number(`${match[1] || '0'}.${match[3] || '0'}`) * UNITS[match[2]!]!);
  const tolerance = toleranceOf(value, match[4]);
  if (value === 0 || !tolerance) return null;
  return { value, notation: 'letter-for-point', ...tolerance, why: `${match[2]}F, the letter stands for the point.` };
}

/** A letter means pF below 10 pF, and a share from there on; null for a letter that means neither. */
function toleranceOf(farads: number, letter: string | undefined): Pick<CodeReading, 'tolerance' | 'toleranceF'> | null {
  if (letter === undefined) return { tolerance: null };
  const small = farads < 9.999e-12 ? SMALL_TOLERANCES[letter] : undefined;
  if (small !== undefined) return { tolerance: null, toleranceF: small };
  const share = TOLERANCES[letter];
  return share === undefined ? null : { tolerance: share };
}
