import { nearest } from '../rules/nearest.ts';
import { packageNamed, packageNames } from './packages.ts';
import { courtyardOf } from './pads.ts';
import type { CsvRow } from './readings-csv.ts';
import type { ModelFile } from './schema.ts';

/** One line of a placement file. */
export interface PlacementRow {
  /** Line of the file, from 1. */
  readonly line: number;
  readonly ref: string;
  /** Middle of the part, mm from the lower left corner of the front; 0 for a part that is off the board. */
  readonly x: number;
  readonly y: number;
  /** Degrees against the clock, seen from the front. */
  readonly rotation: number;
  readonly side: 'front' | 'back' | 'off';
  readonly value: string;
  /** As in the table of packages; empty for a part that is off the board. */
  readonly package: string;
  /** Block of the model that it belongs to. */
  readonly block: string;
  /** Nodes of the netlist in the order of its pins, null for a pin that is joined to nothing; empty when the netlist says. */
  readonly nets: readonly (string | null)[];
}

export interface PlacementProblem {
  readonly ok: false;
  readonly code: 'model-placement';
  readonly line: number;
  /** The column, or "header". */
  readonly field: string;
  readonly message: string;
  readonly next: string;
}

const NEEDED = ['ref', 'x', 'y', 'rotation', 'side', 'value', 'package', 'block'] as const;
const COLUMNS = [...NEEDED, 'nets'] as const;
type Cells = Readonly<Record<(typeof COLUMNS)[number], string>>;
type Bad = { readonly field: string; readonly message: string; readonly next: string };
type Known = Pick<ModelFile, 'blocks' | 'board'>;

const SIDES: Readonly<Record<string, PlacementRow['side']>> = { front: 'front', top: 'front', back: 'back', bottom: 'back', off: 'off' };

/**
 * The places of parts from rows with the columns Ref, X, Y, Rotation, Side, Value, Package, Block and, where the netlist does not
 * say it, Nets; in any order, the first row naming them, in any case. Every bad row is told; the good ones are still there.
 */
export function placementFrom(
  rows: readonly CsvRow[],
  file: Known,
  commaIsDecimal: boolean,
): { readonly placed: PlacementRow[]; readonly problems: PlacementProblem[] } {
  const [header, ...body] = rows.filter(({ cells }) => cells.some((cell) => cell.trim() !== ''));
  const placed: PlacementRow[] = [];
  const problems: PlacementProblem[] = [];
  const refuse = (line: number, bad: Bad): void => void problems.push({ ok: false, code: 'model-placement', line, ...bad });
  const names = (header?.cells ?? []).map((cell) => cell.trim().toLowerCase());
  const badHeader = headerProblem(names);
  if (badHeader) refuse(header?.line ?? 1, badHeader);
  const taken = new Map<string, number>();
  for (const row of badHeader ? [] : body) {
    const read = readRow(row, names, file, commaIsDecimal);
    const before = 'ref' in read ? taken.get(read.ref.toLowerCase()) : undefined;
    if ('message' in read) refuse(row.line, read);
    else if (before !== undefined) refuse(row.line, twice(read.ref, before));
    else {
      taken.set(read.ref.toLowerCase(), row.line);
      placed.push(read);
    }
  }
  return { placed, problems };
}

const twice = (ref: string, line: number): Bad => ({
  field: 'ref',
  message: `"${ref}" is placed a second time; line ${line} has it already`,
  next: 'Correct the reference, or take one of the two out.',
});

function headerProblem(names: readonly string[]): Bad | undefined {
  const missing = NEEDED.find((column) => !names.includes(column));
  const strange = names.find((name) => !COLUMNS.some((column) => column === name));
  const again = names.find((name, index) => names.indexOf(name) !== index);
  const next = 'The first line reads Ref,X,Y,Rotation,Side,Value,Package,Block,Nets (in any order; Nets may be left out).';
  if (missing) return { field: 'header', message: `has no column "${missing}"`, next };
  if (strange !== undefined) return { field: 'header', message: `has a column "${strange}" that is not known`, next };
  return again === undefined ? undefined : { field: 'header', message: `has the column "${again}" twice`, next };
}

function readRow({ line, cells }: CsvRow, names: readonly string[], file: Known, commaIsDecimal: boolean): PlacementRow | Bad {
  if (cells.length !== names.length) {
    const next = 'Put a value that holds a comma in quotes, or separate the columns by semicolons.';
    return { field: 'value', message: `has ${cells.length} fields where the header has ${names.length}`, next };
  }
  const of = { nets: '', ...Object.fromEntries(names.map((name, index) => [name, cells[index]!.trim()])) } as Cells;
  const bad = refProblem(of) ?? blockProblem(of, file);
  if (bad) return bad;
  const side = SIDES[of.side.toLowerCase()];
  if (!side)
    return { field: 'side', message: `"${of.side}" is not a side`, next: 'Write front, back, or off for a part that is on no board.' };
  const { ref, value, block } = of;
  const nets = of.nets.split(/\s+/).flatMap((net) => (net === '' ? [] : [net === '-' ? null : net.toLowerCase()]));
  if (side === 'off') return { line, ref, x: 0, y: 0, rotation: 0, side, value, package: '', block, nets };
  const place = placeIn(of, commaIsDecimal);
  if ('message' in place) return place;
  return (
    packageProblem(of, nets) ??
    offBoard(of, place, file) ?? { line, ref, ...place, side, value, package: of.package.toUpperCase(), block, nets }
  );
}

function refProblem({ ref }: Cells): Bad | undefined {
  if (/^[A-Za-z][A-Za-z0-9]{0,15}$/.test(ref)) return undefined;
  return { field: 'ref', message: `"${ref}" is not a reference`, next: 'Write a letter, then letters and digits, such as R12 or J4.' };
}

function blockProblem({ block }: Cells, { blocks }: Known): Bad | undefined {
  const ids = blocks.map(({ id }) => id);
  if (ids.includes(block)) return undefined;
  return { field: 'block', message: `names the block "${block}", which is not in blocks`, next: `Known here: ${nearest(block, ids)}.` };
}

function placeIn(of: Cells, commaIsDecimal: boolean): { x: number; y: number; rotation: number } | Bad {
  const place = { x: 0, y: 0, rotation: 0 };
  for (const field of ['x', 'y', 'rotation'] as const) {
    const text = commaIsDecimal ? of[field].replace(',', '.') : of[field];
    if (!/^-?\d{1,6}(?:\.\d{0,6})?$/.test(text))
      return {
        field,
        message: `"${of[field]}" is not a number`,
        next: 'Write mm or degrees with a decimal point and without a unit, such as 12.5.',
      };
    place[field] = Number(text);
  }
  return place;
}

function packageProblem(of: Cells, nets: readonly (string | null)[]): Bad | undefined {
  const found = packageNamed(of.package);
  if (!found)
    return {
      field: 'package',
      message: `"${of.package}" is not in the table of packages`,
      next: `Known here: ${nearest(of.package, packageNames())}.`,
    };
  const pins = Math.max(...found.pads.map(({ pin }) => pin ?? 0));
  if (nets.length === 0 || nets.length === pins) return undefined;
  const message = `names ${nets.length} nets, but ${of.package} has ${pins} pins`;
  return { field: 'nets', message, next: 'Write one net for each pin in the order of pins, "-" for a pin that is joined to nothing.' };
}

function offBoard(of: Cells, place: { x: number; y: number; rotation: number }, { board }: Known): Bad | undefined {
  if (!board) return undefined;
  const { x, y } = courtyardOf({ ...place, package: of.package });
  if (x >= 0 && x <= board.width_mm && y >= 0 && y <= board.height_mm) return undefined;
  const field = x >= 0 && x <= board.width_mm ? 'y' : 'x';
  const message = `lies beside the board: ${x}, ${y} mm on ${board.width_mm} × ${board.height_mm} mm`;
  return { field, message, next: 'Measure it from the lower left corner of the front, in mm; a part on no board has the side "off".' };
}
