import { partFromDrawing, FitError, type Pattern } from '../../core/fit/index.ts';
import { csvTable, numberIn, type BadCell, type CellsOf, type CsvLine, type CsvProblem } from '../csv/csv-table.ts';
import { PAD_COLUMNS, padRow, patternOfLines, type PadLine } from './pads-csv.ts';
import { TOLD_COLUMNS, toldIn, withTold, type Told } from './told.ts';

/** One part of a supplier's list. */
export interface ListedPart {
  readonly name: string;
  readonly supplier: string;
  /** As the list writes it. */
  readonly price: string;
  readonly pattern: Pattern;
}

export interface PartsRead {
  readonly parts: readonly ListedPart[];
  /** Lines that are left out, and why. */
  readonly problems: readonly CsvProblem[];
}

const OFFER_COLUMNS = ['supplier', 'price'] as const;
export const DRAWING_COLUMNS = [
  'part',
  'sides',
  'pins',
  'pitch_mm',
  'span_min_mm',
  'foot_min_mm',
  'width_min_mm',
  'span_max_mm',
  'foot_max_mm',
  'width_max_mm',
  ...TOLD_COLUMNS,
  ...OFFER_COLUMNS,
] as const;
const NEEDED_OF_DRAWING = 7;
export const LIST_PAD_COLUMNS = [
  'part',
  'x_mm',
  'y_mm',
  'w_mm',
  'h_mm',
  'pin',
  ...PAD_COLUMNS.slice(5),
  ...TOLD_COLUMNS,
  ...OFFER_COLUMNS,
] as const;
const NEEDED_OF_PADS = 5;

/**
 * The parts of a supplier's list. Either a line a part, with the numbers of its drawing; or a line a pad, with the name of its part in front, of which the first tells what
 * pads do not say. Which of the two it is shows in its first line. Every bad line is told, and a part with a bad pad is left out whole.
 */
export function partsFromCsv(lines: readonly CsvLine[]): PartsRead {
  const header = lines.find(({ cells }) => cells.some((cell) => cell.trim() !== ''))?.cells ?? [];
  return header.some((cell) => cell.trim().toLowerCase() === 'x_mm') ? fromPads(lines) : fromDrawings(lines);
}

type DrawingCells = CellsOf<(typeof DRAWING_COLUMNS)[number]>;

function fromDrawings(lines: readonly CsvLine[]): PartsRead {
  const { rows, problems } = csvTable(lines, { columns: DRAWING_COLUMNS, needed: NEEDED_OF_DRAWING, read: drawnPart });
  return { parts: rows, problems };
}

const SIZES = ['span', 'foot', 'width'] as const;

function drawnPart(cells: DrawingCells): ListedPart | BadCell {
  const name = nameIn(cells.part);
  if (typeof name !== 'string') return name;
  const told = toldIn(cells);
  if ('message' in told) return told;
  const numbers: Record<string, number> = {};
  for (const field of ['sides', 'pins', 'pitch_mm', ...SIZES.flatMap((size) => [`${size}_min_mm`, `${size}_max_mm`] as const)] as const) {
    const least = field.endsWith('_max_mm') ? numbers[field.replace('_max_', '_min_')]! : null;
    const value = numberIn(field, cells[field], field === 'pitch_mm' ? 0 : least, field.endsWith('_mm') ? 'millimetres' : 'a whole number');
    if (typeof value !== 'number') return value;
    numbers[field] = value;
  }
  if (![1, 2, 4].includes(numbers['sides']!))
    return { field: 'sides', message: 'is none of 1, 2, 4', next: 'Give on how many sides it has feet.' };
  return madeFrom(name, numbers, told, cells);
}

function madeFrom(name: string, numbers: Readonly<Record<string, number>>, told: Told, cells: DrawingCells): ListedPart | BadCell {
  const range = (size: (typeof SIZES)[number]) => [numbers[`${size}_min_mm`]!, numbers[`${size}_max_mm`]!] as const;
  try {
    const pattern = partFromDrawing({
      name,
      kind: told.kind ?? 'other',
      sides: numbers['sides'] as 1 | 2 | 4,
      pins: numbers['pins']!,
      pitchMm: numbers['pitch_mm']!,
      spanMm: range('span'),
      footMm: range('foot'),
      widthMm: range('width'),
      heightMm: told.heightMm,
    });
    return { name, supplier: cells.supplier.trim(), price: cells.price.trim(), pattern: withTold(pattern, told) };
  } catch (trouble) {
    if (!(trouble instanceof FitError)) throw trouble;
    return { field: 'part', message: `"${name}" cannot be drawn: ${trouble.message}`, next: 'Look at its drawing again.' };
  }
}

interface ListedPad extends PadLine {
  readonly name: string;
  readonly told: Told;
  readonly supplier: string;
  readonly price: string;
}

function fromPads(lines: readonly CsvLine[]): PartsRead {
  const spoilt = new Set<string>();
  const read = (cells: CellsOf<(typeof LIST_PAD_COLUMNS)[number]>, line: number): ListedPad | BadCell => {
    const found = listedPad(cells, line);
    if ('message' in found) spoilt.add(cells.part.trim());
    return found;
  };
  const { rows, problems } = csvTable(lines, { columns: LIST_PAD_COLUMNS, needed: NEEDED_OF_PADS, read });
  const byPart = new Map<string, ListedPad[]>();
  for (const row of rows) byPart.set(row.name, [...(byPart.get(row.name) ?? []), row]);
  const parts = [...byPart].filter(([name]) => !spoilt.has(name)).map(([name, pads]) => partOfPads(name, pads));
  return { parts, problems };
}

function listedPad(cells: CellsOf<(typeof LIST_PAD_COLUMNS)[number]>, line: number): ListedPad | BadCell {
  const name = nameIn(cells.part);
  if (typeof name !== 'string') return name;
  const told = toldIn(cells);
  if ('message' in told) return told;
  const pad = padRow(cells, line);
  return 'message' in pad ? pad : { ...pad, name, told, supplier: cells.supplier.trim(), price: cells.price.trim() };
}

function partOfPads(name: string, pads: readonly ListedPad[]): ListedPart {
  const { told, supplier, price } = pads[0]!;
  const pattern = patternOfLines(pads, { name, kind: told.kind ?? 'other', basis: 'lands' });
  return { name, supplier, price, pattern: withTold(pattern, told) };
}

const nameIn = (cell: string): string | BadCell =>
  cell.trim() === '' ? { field: 'part', message: 'is empty', next: 'Give each part a name.' } : cell.trim();
