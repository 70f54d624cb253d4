/** The number in a cell, with the sign for decimals given; undefined when it is none. A unit behind the number is left out. */
export function numberIn(cell: string, decimal: '.' | ','): number | undefined {
  const text = cell.trim().replace(/\s*(?:°?[CFK]|[mµuk]?[VAWs]|mAh|min|h)$/u, '');
  const plain = decimal === ',' ? commaNumber(text) : text.replace(/^(-?\d{1,3}(?:,\d{3})+)(?=\.|$)/, (whole) => whole.replaceAll(',', ''));
  return /^[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?$/.test(plain) ? Number(plain) : undefined;
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
