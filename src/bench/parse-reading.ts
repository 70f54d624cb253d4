import type { MeterMode } from './events/index.ts';

export type ParsedReading =
  | {
      readonly ok: true;
      /** What the text itself says of the mode; undefined when it only holds a number or OL. */
      readonly mode: MeterMode | undefined;
      /** In V, Ω or A; null when the meter shows OL. */
      readonly value: number | null;
    }
  | {
      readonly ok: false;
      readonly code: 'reading-empty' | 'reading-unclear' | 'reading-ambiguous' | 'reading-impossible';
      /** A sentence that says what is wrong and how to write it. */
      readonly message: string;
    };

/** Powers of ten of the prefixes that meters show. `K` is read as kilo; `u` stands for µ. */
const PREFIX: Readonly<Record<string, number>> = { n: -9, u: -6, µ: -6, μ: -6, m: -3, '': 0, k: 3, K: 3, M: 6 };

const UNIT_MODE: readonly (readonly [RegExp, MeterMode])[] = [
  [/^(?:v|volts?|vdc|vac)$/i, 'volts'],
  [/^(?:ω|Ω|ohms?)$/iu, 'ohms'],
  [/^(?:a|amps?|amperes?)$/i, 'amps'],
];

const DIODE_FIRST = /^(?:diode|diode mode|diode drop)\b[\s:]*/i;
const DIODE_WORD = /\s*\b(?:diode|diode mode|diode drop)$/i;
const OVERLOAD = /^(?:o\.?l\.?|0\.?l\.?|∞|inf|infinity|overload|open loop)$/i;
const HIGHEST_DROP_V = 10;

const bad = (code: 'reading-empty' | 'reading-unclear' | 'reading-ambiguous' | 'reading-impossible', message: string): ParsedReading => ({
  ok: false,
  code,
  message,
});

/**
 * The mode and value in what a person types from a meter: `3.28`, `3,28 V`, `512 mV`, `0.512 diode`, `OL`, `4k7`
 * (the letter stands for the point, IEC 60062), `12.5 kΩ`, `1M ohm`, `140 mA`. A comma is a decimal point, since meters
 * group no digits. Words of the mode may stand before or after: `diode 0.512`. A bare `m` is milli of the mode `at` in which the point is measured; without one,
 * and in ohms where it may be meant for mega, it is refused.
 */
export function parseReading(text: string, at?: MeterMode): ParsedReading {
  const typed = text.trim();
  if (typed === '') return bad('reading-empty', 'Nothing is written: type what the meter shows, such as 3.28, 0.512 diode, 4k7 or OL.');
  const isDiode = DIODE_WORD.test(typed) || DIODE_FIRST.test(typed);
  const rest = typed.replace(DIODE_WORD, '').replace(DIODE_FIRST, '').trim();
  const parsed = overload(rest) ?? rkm(rest) ?? plain(rest, isDiode ? 'diode' : at) ?? unclear(typed);
  return isDiode ? asDiode(parsed) : parsed;
}

function overload(text: string): ParsedReading | undefined {
  const [first, unit, more] = text.split(/\s+/);
  if (first === undefined || more !== undefined || !OVERLOAD.test(first)) return undefined;
  if (unit === undefined) return { ok: true, mode: undefined, value: null };
  const mode = modeOf(unit.replace(/^[kKM](?=.)/, ''));
  return mode ? { ok: true, mode, value: null } : undefined;
}

/** IEC 60062: `4k7` is 4.7 kΩ, `4R7` 4.7 Ω, `1M` 1 MΩ, `R47` 0.47 Ω. */
function rkm(text: string): ParsedReading | undefined {
  const match = /^(\d{0,15})([RrkKM])(\d{0,15})\s*(?:ω|Ω|[Oo]hms?)?$/u.exec(text);
  if (!match || (match[1] === '' && match[3] === '')) return undefined;
  const exponent = /r/i.test(match[2]!) ? 0 : PREFIX[match[2]!]!;
  return { ok: true, mode: 'ohms', value: Number(`${match[1] || '0'}.${match[3] || '0'}e${exponent}`) };
}

function plain(text: string, at: MeterMode | undefined): ParsedReading | undefined {
  const match = /^([-+−]?)(\d{1,15}(?:[.,]\d{0,15})?|[.,]\d{1,15})\s*(.*)$/su.exec(text);
  if (!match) return undefined;
  const number = `${match[1] === '−' ? '-' : match[1]}${match[2]!.replace(',', '.')}`;
  const suffix = suffixOf(match[3]!);
  if (suffix === undefined) return undefined;
  if (suffix === 'bare-milli') {
    if (at !== undefined && at !== 'ohms') return { ok: true, mode: at === 'amps' ? 'amps' : 'volts', value: Number(`${number}e-3`) };
    if (at === 'ohms') return bad('reading-ambiguous', `"${text}" may be milli or mega: write ${match[2]} mΩ or ${match[2]} M.`);
    return bad('reading-ambiguous', `"${text}" may be millivolts or milliamperes: write ${match[2]} mV, ${match[2]} mA or ${match[2]} mΩ.`);
  }
  const value = Number(`${number}e${suffix.exponent}`);
  if (suffix.mode === 'ohms' && value < 0)
    return bad('reading-impossible', 'A resistance below zero does not exist: turn the board off, empty its capacitors and measure again.');
  return { ok: true, mode: suffix.mode, value };
}

/** What follows the number; undefined when it is neither a prefix nor a unit. */
function suffixOf(text: string): { exponent: number; mode: MeterMode | undefined } | 'bare-milli' | undefined {
  if (text === '') return { exponent: 0, mode: undefined };
  if (text === 'm') return 'bare-milli';
  if (/^[kKM]$/.test(text)) return { exponent: PREFIX[text]!, mode: 'ohms' };
  if (/^[rR]$/.test(text)) return { exponent: 0, mode: 'ohms' };
  const whole = modeOf(text);
  if (whole) return { exponent: 0, mode: whole };
  const exponent = PREFIX[text[0]!];
  const mode = modeOf(text.slice(1).trim());
  return exponent === undefined || mode === undefined ? undefined : { exponent, mode };
}

const modeOf = (unit: string): MeterMode | undefined => UNIT_MODE.find(([pattern]) => pattern.test(unit))?.[1];

function asDiode(parsed: ParsedReading): ParsedReading {
  if (!parsed.ok) return parsed;
  if (parsed.mode !== undefined && parsed.mode !== 'volts')
    return bad('reading-unclear', 'Diode mode shows a drop in volts: write it as 0.512 diode or 512 mV diode.');
  if (parsed.value !== null && Math.abs(parsed.value) > HIGHEST_DROP_V)
    return bad('reading-impossible', `No meter tests a diode with ${parsed.value} V: write millivolts as ${parsed.value} mV diode.`);
  return { ok: true, mode: 'diode', value: parsed.value };
}

const unclear = (text: string): ParsedReading =>
  bad(
    'reading-unclear',
    `"${text.slice(0, 40)}" is not a reading: write a number and its unit as the meter shows it, such as 3.28 V, 0.512 diode, 4k7, 140 mA or OL.`,
  );
