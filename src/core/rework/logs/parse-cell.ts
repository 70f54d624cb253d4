/** Units that may stand behind a number, and what each makes of it in SI or °C. */
const CELL_UNITS: Readonly<Record<string, (value: number) => number>> = {
  V: (v) => v,
  mV: (v) => v / 1e3,
  A: (v) => v,
  mA: (v) => v / 1e3,
  µA: (v) => v / 1e6,
  uA: (v) => v / 1e6,
  s: (v) => v,
  ms: (v) => v / 1e3,
  min: (v) => v * 60,
  h: (v) => v * 3600,
  C: (v) => v,
  F: (v) => ((v - 32) * 5) / 9,
  K: (v) => v - 273.15,
};
const WITH_UNIT = /^(.*?[\d.,])\s*°?(V|mV|A|mA|µA|uA|s|ms|min|h|C|F|K)$/u;

/** Whether a number in a cell brings its own unit, which then counts and not that of the header. */
export const hasUnit = (cell: string): boolean => WITH_UNIT.test(cell.trim());

/** The number in a cell, with the sign for decimals given; undefined when it is none. With a unit behind it, in SI or °C. */
export function numberIn(cell: string, decimal: '.' | ','): number | undefined {
  const match = WITH_UNIT.exec(cell.trim());
  const text = match?.[1] ?? cell.trim();
  const plain = decimal === ',' ? commaNumber(text) : text.replace(/^(-?\d{1,3}(?:,\d{3})+)(?=\.|$)/, (whole) => whole.replaceAll(',', ''));
  if (!/^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(plain)) return undefined;
  return CELL_UNITS[match?.[2] ?? 'V']!(Number(plain));
}

/** With a comma for the point; points between groups of three are taken out, and one alone is refused. */
function commaNumber(text: string): string {
  const grouped = /^[+-]?\d{1,3}(?:\.\d{3})+(?:,\d+)?$/.test(text) && text.includes(',') ? text.replaceAll('.', '') : text;
  return grouped.includes('.') ? 'no number' : grouped.replace(',', '.');
}

/** Seconds of a clock: since its start (mm:ss, hh:mm:ss), or since 1970 with a date before it. `clock` tells which. */
export interface ClockTime {
  readonly seconds: number;
  readonly clock: 'elapsed-or-day' | 'date';
}

const TIME = String.raw`(\d{1,3}):(\d{2})(?::(\d{2})(?:[.,](\d+))?)?`;
const YEAR_FIRST = new RegExp(String.raw`^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})[T ]+${TIME}\s*Z?$`);
const YEAR_LAST = new RegExp(String.raw`^(\d{1,2})[-/.](\d{1,2})[-/.](\d{4})[T ,]+${TIME}$`);
const ALONE = new RegExp(`^${TIME}$`);

/** The time in a cell written with colons; undefined when it is none. mm:ss where there is one colon. */
export function clockIn(cell: string): ClockTime | undefined {
  const text = cell.trim();
  const alone = ALONE.exec(text);
  if (alone)
    return { seconds: alone[3] === undefined ? Number(alone[1]) * 60 + Number(alone[2]) : ofDay(alone.slice(1)), clock: 'elapsed-or-day' };
  const first = YEAR_FIRST.exec(text);
  if (first) return dated(Number(first[1]), Number(first[2]), Number(first[3]), first.slice(4));
  const last = YEAR_LAST.exec(text);
  if (!last) return undefined;
  const [a, b] = [Number(last[1]), Number(last[2])];
  // Day before month, save where that cannot be.
  return b > 12 ? dated(Number(last[3]), a, b, last.slice(4)) : dated(Number(last[3]), b, a, last.slice(4));
}

const ofDay = ([hours, minutes, seconds = '0', fraction = '']: readonly (string | undefined)[]): number =>
  Number(hours) * 3600 + Number(minutes) * 60 + Number(seconds) + Number(`0.${fraction || '0'}`);

const dated = (year: number, month: number, day: number, time: readonly (string | undefined)[]): ClockTime => ({
  seconds: Date.UTC(year, month - 1, day) / 1000 + ofDay(time),
  clock: 'date',
});
