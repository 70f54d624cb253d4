import { LENGTH_UNITS, lengthUnitIn, PLACEMENT_FIELDS, sideOf, type ColumnMapping, type PlacementField } from './placement-columns.ts';

/** One row of a table, with its line in the file. */
export interface TableRow {
  readonly line: number;
  readonly cells: readonly string[];
}

/** What the mapping leaves open. */
export interface MappingDefaults {
  /** Block for parts of which the table says none, by reference. */
  readonly blockOf: (ref: string) => string;
  /** Names of packages that are known. */
  readonly packages: readonly string[];
  /** True where the back is counted from the left as one looks at the back. */
  readonly backIsMirrored: boolean;
  /** Width of the board, mm: what a mirrored back is turned by. */
  readonly boardWidthMm: number;
}

/** A number that a cell should have held and does not. */
export interface UnreadCell {
  readonly line: number;
  readonly field: PlacementField;
  readonly text: string;
}

/**
 * The rows of a foreign table as rows of a placement (docs/model-format.md), the header first: mm from the lower left corner of the front, sides as front
 * and back, packages by the names that are known where one stands in the text. Cells that should hold a number and do not are told and stay as they are, for whoever
 * reads the placement to refuse.
 */
export function mapPlacement(
  rows: readonly TableRow[],
  { columns, headerRows, unit }: ColumnMapping,
  defaults: MappingDefaults,
): { readonly rows: TableRow[]; readonly unread: UnreadCell[] } {
  const unread: UnreadCell[] = [];
  const body = rows.slice(headerRows).filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const mapped = body.map(({ line, cells }): TableRow => {
    const cell = (field: PlacementField): string => (columns[field] === undefined ? '' : (cells[columns[field]]?.trim() ?? ''));
    const number = (field: 'x' | 'y' | 'rotation', scale: number): number | null => {
      const value = cell(field) === '' && field === 'rotation' ? 0 : numberOf(cell(field), scale);
      if (value === null) unread.push({ line, field, text: cell(field) });
      return value;
    };
    const [x, y, rotation] = [number('x', LENGTH_UNITS[unit]), number('y', LENGTH_UNITS[unit]), number('rotation', 1)];
    const side = cell('side') === '' ? 'front' : sideOf(cell('side'));
    const turned = side === 'back' && defaults.backIsMirrored;
    const of: Record<PlacementField, string> = {
      ref: cell('ref'),
      x: x === null ? cell('x') : written(turned ? defaults.boardWidthMm - x : x),
      y: y === null ? cell('y') : written(y),
      rotation: rotation === null ? cell('rotation') : written(turned ? (540 - rotation) % 360 : rotation),
      side: side ?? cell('side'),
      value: cell('value'),
      package: packageIn(cell('package'), defaults.packages),
      block: cell('block') || defaults.blockOf(cell('ref')),
      nets: cell('nets'),
    };
    return { line, cells: PLACEMENT_FIELDS.map((field) => of[field]) };
  });
  return { rows: [{ line: rows[Math.max(0, headerRows - 1)]?.line ?? 1, cells: [...PLACEMENT_FIELDS] }, ...mapped], unread };
}

/** A comma is taken for the decimal point. A unit behind the number goes before that of the table. */
function numberOf(text: string, scale: number): number | null {
  const [, digits] = /^([-+]?\d+(?:[.,]\d+)?)\s*[a-zµ"°]*$/i.exec(text) ?? [];
  if (digits === undefined) return null;
  const own = lengthUnitIn(text);
  return Number(digits.replace(',', '.')) * (own ? LENGTH_UNITS[own] : scale);
}

const written = (value: number): string => String(Number(value.toFixed(4)));

const plain = (text: string): string => text.toUpperCase().replace(/[^A-Z0-9]/g, '');

/** The longest known name that stands in the text; the text itself where none does. */
function packageIn(text: string, packages: readonly string[]): string {
  const inside = plain(text);
  const [best] = packages.filter((name) => inside.includes(plain(name))).sort((a, b) => b.length - a.length);
  return best ?? text;
}
