/** One line of a CSV file, taken apart by whoever read it; the line is counted from 1. */
export interface CsvLine {
  readonly line: number;
  readonly cells: readonly string[];
}

export interface CsvProblem {
  readonly ok: false;
  readonly code: 'bad-csv';
  readonly line: number;
  /** The column, or "header". */
  readonly field: string;
  /** What is wrong there, as a clause. */
  readonly message: string;
  /** What to do about it, as a sentence. */
  readonly next: string;
}

/** What is wrong with one cell. */
export type BadCell = Pick<CsvProblem, 'field' | 'message' | 'next'>;

/** The cells of one line by the name of their column; absent columns are empty. */
export type CellsOf<Column extends string> = Readonly<Record<Column, string>>;

interface Table<Column extends string, Row> {
  /** Every column that is known; the first `needed` of them must be there. */
  readonly columns: readonly Column[];
  readonly needed: number;
  readonly read: (cells: CellsOf<Column>, line: number) => Row | BadCell;
}

const isBad = (read: unknown): read is BadCell => typeof read === 'object' && read !== null && 'next' in read && 'message' in read;

/** The rows of a table whose first line names its columns, in any order. Every bad line is told; the good ones are still there. Empty lines are passed over. */
export function csvTable<Column extends string, Row>(
  lines: readonly CsvLine[],
  { columns, needed, read }: Table<Column, Row>,
): { readonly rows: Row[]; readonly problems: CsvProblem[] } {
  const [header, ...body] = lines.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const rows: Row[] = [];
  const problems: CsvProblem[] = [];
  const refuse = (line: number, bad: BadCell): void => void problems.push({ ok: false, code: 'bad-csv', line, ...bad });
  if (!header) return { rows, problems };
  const names = header.cells.map((cell) =>
    cell
      .replace(/^\uFEFF/, '')
      .trim()
      .toLowerCase(),
  );
  const badHeader = headerProblem(names, columns, needed);
  if (badHeader) return { rows, problems: [{ ok: false, code: 'bad-csv', line: header.line, ...badHeader }] };
  for (const { line, cells } of body) {
    const found = cells.length === names.length ? read(cellsOf(names, cells, columns), line) : countProblem(cells, names);
    if (isBad(found)) refuse(line, found);
    else rows.push(found);
  }
  return { rows, problems };
}

function cellsOf<Column extends string>(names: readonly string[], cells: readonly string[], columns: readonly Column[]): CellsOf<Column> {
  const at = new Map(names.map((name, i) => [name, cells[i]!]));
  return Object.fromEntries(columns.map((column) => [column, at.get(column) ?? ''])) as CellsOf<Column>;
}

function headerProblem(names: readonly string[], columns: readonly string[], needed: number): BadCell | undefined {
  const missing = columns.slice(0, needed).find((column) => !names.includes(column));
  const strange = names.find((name) => !columns.includes(name));
  const twice = names.find((name, i) => names.indexOf(name) !== i);
  const next = `The first line names the columns ${columns.slice(0, needed).join(',')} and as wanted ${columns.slice(needed).join(',')}.`;
  if (missing !== undefined) return { field: 'header', message: `has no column "${missing}"`, next };
  if (strange !== undefined) return { field: 'header', message: `has a column "${strange}" that is not known`, next };
  return twice === undefined ? undefined : { field: 'header', message: `has the column "${twice}" twice`, next };
}

const countProblem = (cells: readonly string[], names: readonly string[]): BadCell => ({
  field: names[Math.min(cells.length, names.length - 1)]!,
  message: `has ${cells.length} cells where the first line has ${names.length}`,
  next: 'Put a cell that holds a comma, a quote or a new line in quotes.',
});

/** A number of a cell; `fallback` when it is empty. A comma is its decimal point where no other reading is possible. */
export function numberIn(field: string, cell: string, fallback: number | null, wanted: string): number | BadCell {
  const text = cell.trim();
  if (text === '' && fallback !== null) return fallback;
  if (/^[-+]?\d{1,9}(?:[.,]\d{0,9})?$/.test(text) && !/^[-+]?[1-9]\d{0,2},\d{3}$/.test(text)) return Number(text.replace(',', '.'));
  return {
    field,
    message: text === '' ? 'is empty' : `"${text}" is not a number`,
    next: `Write ${wanted} with a decimal point and without a unit.`,
  };
}

/** What the word of a cell stands for; capitals do not matter, and an empty cell may stand for something too. */
export function wordIn<T>(field: string, cell: string, known: Readonly<Record<string, T>>): T | BadCell {
  const text = cell.trim().toLowerCase();
  if (Object.hasOwn(known, text)) return known[text]!;
  return { field, message: `"${cell}" is not known`, next: `Write one of ${Object.keys(known).filter(Boolean).join(', ')}.` };
}
