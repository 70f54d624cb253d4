import { nearest } from '../rules/nearest.ts';
import type { ModelFile, ReferenceReading } from './schema.ts';

/** One line of a CSV file, taken apart by whoever read it. */
export interface CsvRow {
  /** In the file, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

export interface ReadingsProblem {
  readonly ok: false;
  readonly code: 'model-readings';
  readonly line: number;
  /** The column, or "header". */
  readonly field: string;
  readonly message: string;
  readonly next: string;
}

const COLUMNS = ['board', 'point', 'mode', 'value', 'unit'] as const;
type Column = (typeof COLUMNS)[number];
type Mode = ReferenceReading['mode'];
type Cells = Readonly<Record<Column, string>>;
/** What is wrong with one cell. */
type Bad = { readonly field: string; readonly message: string; readonly next: string };

/** What one unit is in V, Ω or A, and the modes that it goes with. `M` and `k` alone are ohms, as on a meter. */
const UNITS: readonly (readonly [RegExp, number, readonly Mode[]])[] = [
  [/^V$/i, 1, ['volts', 'diode']],
  [/^mV$/, 1e-3, ['volts', 'diode']],
  [/^(?:[ΩΩ]|ohms?|R)$/iu, 1, ['ohms']],
  [/^k(?:[ΩΩ]|ohms?)?$/iu, 1e3, ['ohms']],
  [/^M(?:[ΩΩ]|[oO]hms?)?$/u, 1e6, ['ohms']],
  [/^A$/i, 1, ['amps']],
  [/^mA$/, 1e-3, ['amps']],
  [/^[uµμ]A$/u, 1e-6, ['amps']],
];
const UNIT_OF: Readonly<Record<Mode, string>> = { volts: 'V or mV', diode: 'V or mV', ohms: 'Ω, k or M', amps: 'A, mA or µA' };

/**
 * Readings of known-good boards from rows with the columns board, point, mode, value, unit in any order, the first row
 * naming them. `value` may be OL where a meter can show it. `commaIsDecimal` says that commas do not separate the
 * columns, so one in a number is its decimal point; otherwise it is taken as one only where it cannot group thousands.
 * Every bad row is told; the good ones are still there.
 */
export function readingsFrom(
  rows: readonly CsvRow[],
  file: Pick<ModelFile, 'points'>,
  commaIsDecimal: boolean,
): { readonly readings: ReferenceReading[]; readonly problems: ReadingsProblem[] } {
  const [header, ...body] = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const readings: ReferenceReading[] = [];
  const problems: ReadingsProblem[] = [];
  const refuse = (line: number, bad: Bad): void => void problems.push({ ok: false, code: 'model-readings', line, ...bad });
  if (!header) return { readings, problems };
  const names = header.cells.map((cell) => cell.trim().toLowerCase());
  const badHeader = headerProblem(names);
  if (badHeader) refuse(header.line, badHeader);
  for (const row of badHeader ? [] : body) {
    const read = readRow(row, names, file, commaIsDecimal);
    if ('message' in read) refuse(row.line, read);
    else readings.push(read);
  }
  return { readings, problems };
}

function headerProblem(names: readonly string[]): Bad | undefined {
  const missing = COLUMNS.find((column) => !names.includes(column));
  const strange = names.find((name) => !COLUMNS.some((column) => column === name));
  const twice = names.find((name, index) => names.indexOf(name) !== index);
  const next = `The first line reads ${COLUMNS.join(',')} (in any order).`;
  if (missing) return { field: 'header', message: `has no column "${missing}"`, next };
  if (strange !== undefined) return { field: 'header', message: `has a column "${strange}" that is not known`, next };
  return twice === undefined ? undefined : { field: 'header', message: `has the column "${twice}" twice`, next };
}

function readRow(
  { cells }: CsvRow,
  names: readonly string[],
  file: Pick<ModelFile, 'points'>,
  commaIsDecimal: boolean,
): ReferenceReading | Bad {
  if (cells.length !== names.length) {
    const next = 'Put a number with a decimal comma in quotes, or separate the columns by semicolons.';
    return { field: 'value', message: `has ${cells.length} fields where the header has ${names.length}`, next };
  }
  const of = Object.fromEntries(names.map((name, index) => [name, cells[index]!.trim()])) as Cells;
  if (of.board === '') return { field: 'board', message: 'is empty', next: 'Give the board that was measured a name, such as good-1.' };
  const point = file.points.find(({ id }) => id === of.point);
  if (!point) {
    const known = file.points.map(({ id }) => id);
    return { field: 'point', message: `"${of.point}" is not a point of the model`, next: `Known here: ${nearest(of.point, known)}.` };
  }
  if (of.mode !== point.mode)
    return {
      field: 'mode',
      message: `is "${of.mode}", but the model measures ${point.id} in ${point.mode}`,
      next: `Write ${point.mode}, or add another point to the model.`,
    };
  const value = valueIn(of, point.mode, commaIsDecimal);
  return typeof value === 'object' && value !== null ? value : { board: of.board, point: point.id, mode: point.mode, value };
}

/** In V, Ω or A; null for OL. */
function valueIn(of: Cells, mode: Mode, commaIsDecimal: boolean): number | null | Bad {
  if (/^o\.?l\.?$/i.test(of.value)) {
    if (mode === 'ohms' || mode === 'diode') return null;
    return { field: 'value', message: `is OL, which says nothing in ${mode}`, next: 'Measure again in a higher range.' };
  }
  const number = numberIn(of.value, commaIsDecimal);
  if (typeof number !== 'number') return number;
  const unit = UNITS.find(([pattern, , modes]) => pattern.test(of.unit) && modes.includes(mode));
  if (!unit) return { field: 'unit', message: `"${of.unit}" is not a unit of ${mode}`, next: `Write ${UNIT_OF[mode]}.` };
  if (mode === 'ohms' && number < 0)
    return { field: 'value', message: 'is a resistance below zero', next: 'Take the power off, empty the capacitors and measure again.' };
  return number * unit[1];
}

function numberIn(text: string, commaIsDecimal: boolean): number | Bad {
  const match = /^([-+−]?)(\d{1,12})(?:([.,])(\d{0,12}))?$/u.exec(text);
  if (!match)
    return {
      field: 'value',
      message: `"${text}" is not a number`,
      next: 'Write it with a decimal point and without spaces, such as 3.28, or OL.',
    };
  const [, sign, whole, mark, rest = ''] = match;
  if (mark === ',' && !commaIsDecimal && rest.length === 3 && whole !== '0')
    return { field: 'value', message: `"${text}" may be ${whole}.${rest} or ${whole}${rest}`, next: 'Write it with a decimal point.' };
  return Number(`${sign === '−' ? '-' : sign}${whole}.${rest || '0'}`);
}
