import { componentsOf, type Component, type Netlist } from '../../core/circuit/index.ts';
import { PLACEMENT_FIELDS, type PlacementField, type TableRow } from '../../core/netting/index.ts';
import type { ModelFile } from '../models/index.ts';

/** Blocks by what a component is, where the model has such a block, the closest first. Common practice, no source. */
const BLOCKS: Readonly<Partial<Record<Component['role'], readonly string[]>>> = {
  battery: ['battery'],
  source: ['charger', 'power-supply'],
  charger: ['charge-control'],
  regulator: ['regulator', 'converter'],
  fuse: ['fuse', 'converter'],
  key: ['keys'],
  speaker: ['speaker'],
};

/** One row of a placement by its fields. */
export type PlacementCells = Readonly<Record<PlacementField, string>>;

export const cellsOf = (header: readonly string[], { cells }: TableRow): PlacementCells => {
  const at = (field: PlacementField): number => header.findIndex((cell) => cell.trim().toLowerCase() === field);
  return Object.fromEntries(PLACEMENT_FIELDS.map((field) => [field, (cells[at(field)] ?? '').trim()])) as Record<PlacementField, string>;
};

export const rowOf = (line: number, cells: Partial<PlacementCells>): TableRow => ({
  line,
  cells: PLACEMENT_FIELDS.map((field) => cells[field] ?? ''),
});

/**
 * The rows of a placement with a block in each, and a row off the board for every component of the netlist that has none: so that a netlist can be used while
 * its parts are still being marked. `fallBack` is the block where nothing tells one.
 */
export function completeRows(
  rows: readonly TableRow[],
  netlist: Netlist,
  { blocks }: Pick<ModelFile, 'blocks'>,
  fallBack: string,
): TableRow[] {
  const [header, ...body] = rows;
  const ids = new Set(blocks.map(({ id }) => id));
  const components = new Map(componentsOf(netlist).map((component) => [component.ref, component]));
  const blockOf = (ref: string): string => {
    const role = components.get(ref.toLowerCase())?.role;
    return (role && BLOCKS[role]?.find((id) => ids.has(id))) ?? fallBack;
  };
  const placed = body.map((row) => {
    const cells = cellsOf(header!.cells, row);
    return rowOf(row.line, cells.block === '' ? { ...cells, block: blockOf(cells.ref) } : cells);
  });
  const known = new Set(placed.map(({ cells: [ref] }) => ref!.toLowerCase()));
  const missing = [...components.keys()].filter((ref) => !known.has(ref));
  const off = missing.map((ref) => rowOf(1, { ref: ref.toUpperCase(), side: 'off', block: blockOf(ref) }));
  return [rowOf(header?.line ?? 1, Object.fromEntries(PLACEMENT_FIELDS.map((field) => [field, field]))), ...placed, ...off];
}
