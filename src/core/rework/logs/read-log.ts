import { columnsByContent, namedColumns, type Column, type Role } from './columns.ts';
import { mendClock, type ClockNote } from './mend-clock.ts';
import { clockIn, hasUnit, numberIn } from './parse-cell.ts';

/** Cells of a text with a delimiter, row by row: a CSV reader, handed in. */
export type SplitRows = (text: string, delimiter: string) => readonly (readonly string[])[];

export interface LogRow {
  readonly seconds: number;
  readonly volts: number;
  readonly amps: number;
  readonly celsius: number;
}

/** How a log was read, to be shown and put right by the person. */
export interface LogGuess {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  /** Rows before the first row of numbers. */
  readonly headerRows: number;
  readonly columns: readonly Column[];
  /** Rows among the numbers that were left out as unreadable. */
  readonly leftOut: number;
}

export type LogRefusal =
  /** No delimiter gives two columns of numbers or more. */
  | 'not-a-table'
  /** Commas both between and inside the numbers. */
  | 'comma-is-both'
  /** A column that is wanted is not named, and the numbers do not tell which it is. */
  | 'column-unclear'
  | 'too-short'
  /** More than a fifth of the rows cannot be read. */
  | 'too-many-unreadable'
  /** Time does not go on. */
  | 'no-time'
  /** By their names volts and amperes stand the wrong way round. */
  | 'columns-look-swapped';

export type ReadLog<K extends Role> =
  | {
      readonly ok: true;
      readonly guess: LogGuess;
      readonly rows: readonly (Pick<LogRow, 'seconds' | Exclude<K, 'time'>> & Partial<LogRow>)[];
      readonly clock: readonly ClockNote[];
      readonly usualStepS: number;
    }
  | { readonly ok: false; readonly code: LogRefusal; readonly guess: LogGuess | null; readonly detail: string };

export interface LogWish<K extends Role> {
  readonly wanted: readonly K[];
  readonly split: SplitRows;
  /** Columns as the person says, by place from 0; SI units. */
  readonly columns?: Partial<Readonly<Record<Role, number>>>;
}

const DELIMITERS = [';', '\t', ',', '|', ' '] as const;
const LEAST_ROWS = 10;

/** Anything that a meter or a logger writes as rows of numbers, read as best it can be, with how that was done; or a refusal that says why. */
export function readLog<K extends Role>(text: string, wish: LogWish<K>): ReadLog<K> {
  const plain = text.replace(/^\uFEFF/, '').replace(/\r\n?/g, '\n');
  const table = bestTable(plain, wish.split);
  if (!table || table.width < 2) return refuse('not-a-table', null, 'no delimiter gives two columns of numbers');
  if (table.body.length < LEAST_ROWS)
    return refuse('too-short', null, `${table.body.length} rows of numbers, at least ${LEAST_ROWS} are needed`);
  if (commaIsBoth(table))
    return refuse('comma-is-both', null, `a row such as "${table.body[0]!.cells.join(',')}" can be cut in more than one way`);
  const columns = columnsOf(table, wish);
  const guess: LogGuess = { ...table, headerRows: table.before.length, columns: columns ?? [], leftOut: table.leftOut };
  if (!columns) return refuse('column-unclear', guess, `the columns are: ${table.header.join(', ') || 'without names'}`);
  if (table.leftOut > 0.2 * (table.body.length + table.leftOut))
    return refuse('too-many-unreadable', guess, `${table.leftOut} rows of ${table.body.length + table.leftOut}`);
  return rowsOf(table, columns, guess);
}

const refuse = (
  code: LogRefusal,
  guess: LogGuess | null,
  detail: string,
): { ok: false; code: LogRefusal; guess: LogGuess | null; detail: string } => ({
  ok: false,
  code,
  guess,
  detail,
});

interface Table {
  readonly delimiter: string;
  readonly decimal: '.' | ',';
  readonly width: number;
  readonly before: readonly (readonly string[])[];
  readonly header: readonly string[];
  readonly body: readonly { readonly cells: readonly string[]; readonly values: readonly (number | undefined)[] }[];
  readonly leftOut: number;
}

/** The delimiter and decimal sign that make the most cells numbers and leave the fewest over; of equal ones the earlier in the list. */
function bestTable(text: string, split: SplitRows): Table | undefined {
  let best: { table: Table; score: number } | undefined;
  for (const delimiter of DELIMITERS) {
    const rows = split(text, delimiter)
      .map((row) => (delimiter === ' ' ? row.filter((cell) => cell !== '') : row))
      .filter((row) => row.some((cell) => cell.trim() !== ''));
    for (const decimal of decimalsToTry(rows, delimiter)) {
      const table = tableOf(rows, delimiter, decimal);
      const score = table.width < 2 ? 0 : moreNumbers(table);
      if (score > 0 && (!best || score > best.score)) best = { table, score };
    }
  }
  return best?.table;
}

/** Likelier first. Where commas stand in the cells and not one point, they are decimals: "3,678" is no thousands then. */
function decimalsToTry(rows: readonly (readonly string[])[], delimiter: string): readonly ('.' | ',')[] {
  if (delimiter === ',') return ['.'];
  const numbers = rows.flat().filter((cell) => /^\s*[-+]?[\d.,]+\s*$/.test(cell));
  const has = (sign: string): boolean => numbers.some((cell) => cell.includes(sign));
  return has(',') && !has('.') ? [',', '.'] : ['.', ','];
}

/** Cells of the body that are numbers, less those that are not. */
const moreNumbers = ({ body }: Table): number =>
  body.reduce((sum, { values }) => sum + 2 * values.filter((value) => value !== undefined).length - values.length, 0);

function tableOf(rows: readonly (readonly string[])[], delimiter: string, decimal: '.' | ','): Table {
  const valued = rows.map((cells) => ({ cells, values: cells.map((cell) => numberIn(cell, decimal) ?? clockIn(cell)?.seconds) }));
  const isRow = ({ values }: { values: readonly (number | undefined)[] }): boolean =>
    values.filter((value) => value !== undefined).length >= 2;
  const first = valued.findIndex(isRow);
  if (first < 0) return { delimiter, decimal, width: 0, before: [], header: [], body: [], leftOut: 0 };
  const width = commonest(valued.slice(first).map(({ values }) => values.length));
  const from = valued.slice(first);
  const body = from.filter((row) => isRow(row) && row.values.length === width);
  const before = rows.slice(0, first);
  return {
    delimiter,
    decimal,
    width,
    before,
    header: before.findLast((row) => row.length === width) ?? [],
    body,
    leftOut: from.length - body.length,
  };
}

function commonest(values: readonly number[]): number {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  return [...counts].reduce((best, each) => (each[1] > best[1] ? each : best))[0];
}

/** Commas as delimiter and not one point: whole numbers by the pair are more likely decimals cut in two, unless a header says how many columns there are. */
function commaIsBoth({ delimiter, body, width, header, before }: Table): boolean {
  if (delimiter !== ',') return false;
  const noPoint = body.every(({ cells }) => cells.every((cell) => !cell.includes('.')));
  const names = header.length > 0 ? header.length : (before.at(-1)?.length ?? 0);
  return noPoint && (names > 0 ? names < width : width >= 4 && width % 2 === 0);
}

/** A number that brings its own unit is in SI already. */
const IN_CELLS = { unit: 'in the cells', toSi: (value: number): number => value };

function columnsOf<K extends Role>(table: Table, wish: LogWish<K>): Column[] | undefined {
  const own = (column: Column): Column => (hasUnit(table.body[0]!.cells[column.index] ?? '') ? { ...column, ...IN_CELLS } : column);
  const named = namedColumns(table.header, [...wish.wanted, 'celsius']).map(own);
  const said = Object.entries(wish.columns ?? {}).map(([role, index]): Column => {
    const byHeader = named.find((column) => column.index === index && column.role === role);
    return byHeader ?? { role: role as Role, index, name: table.header[index] ?? '', unit: 'SI', toSi: (value) => value, from: 'person' };
  });
  const known = [...said, ...named.filter(({ role, index }) => !said.some((each) => each.role === role || each.index === index))];
  if (wish.wanted.every((role) => known.some((column) => column.role === role))) return known;
  if (table.header.length > 0 && named.length > 0) return undefined;
  const numbers = Array.from({ length: table.width }, (_, i) => table.body.map(({ values }) => values[i] ?? Number.NaN));
  return columnsByContent(numbers, wish.wanted)?.map(own);
}

function rowsOf<K extends Role>(table: Table, columns: readonly Column[], guess: LogGuess): ReadLog<K> {
  const time = columns.find(({ role }) => role === 'time')!;
  const others = columns.filter(({ role }) => role !== 'time');
  const needed = [time, ...others];
  const whole = table.body.filter(({ values }) => needed.every(({ index }) => values[index] !== undefined));
  const leftOut = guess.leftOut + table.body.length - whole.length;
  const shown = { ...guess, leftOut };
  if (whole.length < LEAST_ROWS || leftOut > 0.2 * (whole.length + leftOut)) return refuse('too-many-unreadable', shown, `${leftOut} rows`);
  const clockOf = (cells: readonly string[]) => clockIn(cells[time.index]!);
  const clock = clockOf(whole[0]!.cells);
  // A time with colons is in seconds already, whatever unit stands above it.
  const times = whole.map(({ cells, values }) => (clockOf(cells) ? values[time.index]! : time.toSi(values[time.index]!)));
  if (!times.some((each, i) => i > 0 && each > times[i - 1]!)) return refuse('no-time', shown, 'the times never rise');
  const values = whole.map(
    (row) => Object.fromEntries(others.map(({ role, index, toSi }) => [role, toSi(row.values[index]!)])) as Partial<LogRow>,
  );
  if (looksSwapped(values))
    return refuse(
      'columns-look-swapped',
      shown,
      'what is named volts hardly exceeds nought, what is named amperes stays near a cell’s voltage',
    );
  const mended = mendClock(times, clock?.clock === 'elapsed-or-day', steadyAcross(values));
  const rows = values.map((value, i) => ({ ...value, seconds: mended.seconds[i]! }));
  return {
    ok: true,
    guess: shown,
    rows: rows as Extract<ReadLog<K>, { ok: true }>['rows'],
    clock: mended.notes,
    usualStepS: mended.usualStepS,
  };
}

/** A cell's voltage moves little and stays above 0.8 V; a charging current ends near nought. Both the other way round is a mix-up. */
function looksSwapped(rows: readonly Partial<LogRow>[]): boolean {
  if (rows[0]?.volts === undefined || rows[0].amps === undefined) return false;
  const volts = rows.map((row) => row.volts!);
  const amps = rows.map((row) => Math.abs(row.amps!));
  const steadyCell = (values: readonly number[]): boolean =>
    values.every((value) => value > 0.8) && Math.max(...values) < 1.8 * Math.min(...values);
  return Math.max(...volts) < 3 && Math.min(...volts) < 0.5 && steadyCell(amps) && Math.min(...amps) > 1.5;
}

/** Whether the values on both sides of a step differ by no more than neighbours do anyway. */
function steadyAcross(rows: readonly Partial<LogRow>[]): (row: number) => boolean {
  const roles = (['volts', 'amps', 'celsius'] as const).filter((role) => rows[0]?.[role] !== undefined);
  return (row) =>
    roles.every((role) => {
      const near = rows.slice(Math.max(0, row - 8), row + 8).map((each) => each[role]!);
      const at = Math.min(row, 8);
      const steps = near.slice(1).map((value, i) => Math.abs(value - near[i]!));
      const across = steps[at - 1]!;
      const others = steps.filter((_, i) => i !== at - 1);
      return across <= 2 * Math.max(...others) + 1e-9;
    });
}
