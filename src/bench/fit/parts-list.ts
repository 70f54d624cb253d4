import { csvTable, type BadCell, type CellsOf, type CsvLine, type CsvProblem } from '../csv/csv-table.ts';
import { DRAWING_COLUMNS, drawnPart, NEEDED_OF_DRAWING } from './listed-drawing.ts';
import { nameIn, offerIn, OFFER_COLUMNS, type ListedPart } from './listed-part.ts';
import { PAD_COLUMNS, padRow, patternOfLines, type PadLine } from './pads-csv.ts';
import { TOLD_COLUMNS, toldIn, withTold, type Told } from './told.ts';

export interface PartsRead {
  readonly parts: readonly ListedPart[];
  /** Lines that are left out, and why. */
  readonly problems: readonly CsvProblem[];
}

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

function fromDrawings(lines: readonly CsvLine[]): PartsRead {
  const { rows, problems } = csvTable(lines, { columns: DRAWING_COLUMNS, needed: NEEDED_OF_DRAWING, read: drawnPart });
  return { parts: rows, problems };
}

interface ListedPad extends PadLine, Pick<ListedPart, 'name' | 'supplier' | 'price'> {
  readonly told: Told;
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
  return 'message' in pad ? pad : { ...pad, name, told, ...offerIn(cells) };
}

function partOfPads(name: string, pads: readonly ListedPad[]): ListedPart {
  const { told, supplier, price } = pads[0]!;
  const pattern = patternOfLines(pads, { name, kind: told.kind ?? 'other', basis: 'lands' });
  return { name, supplier, price, pattern: withTold(pattern, told) };
}
