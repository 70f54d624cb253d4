import { readNetlist, refOf, type Netlist, type NetlistProblem } from '../../core/circuit/index.ts';
import {
  netlistText,
  PLACEMENT_FIELDS,
  unknownLoadParts,
  type TableRow,
  type UnknownLoad,
  type WrittenPart,
} from '../../core/netting/index.ts';
import { TEST_POINT, type CircuitSpec, type ModelFile } from '../models/index.ts';
import { defaultSpec } from './default-spec.ts';
import { keptSpec } from './kept-spec.ts';

/** Block of what hangs on the rails and is not drawn. */
export const NOT_DRAWN = 'not-drawn';

/** A circuit of which only a part is drawn, made whole by unknown loads: what `modelCircuit` takes. */
export interface PartialCircuit {
  readonly ok: true;
  /** The file with its section `circuit`, and the block `not-drawn` where something is not. */
  readonly file: ModelFile & { readonly circuit: CircuitSpec };
  readonly netlistText: string;
  /** Rows of the placement, the header first; those of parts that are not drawn are left out. */
  readonly rows: readonly TableRow[];
  readonly loads: readonly UnknownLoad[];
}

export type PartialResult = PartialCircuit | { readonly ok: false; readonly problems: readonly NetlistProblem[] };

/** What is taken for a load of which nothing is known: within a factor of 2.7 either way on two boards of three. Common practice, no source. */
const GUESS = { fed: { ampere: 0.03, ohm: 3e3 }, plain: { ampere: 0.004, ohm: 1e5 }, spreads: { ampere: 1, ohm: 1 } } as const;
const FEEDERS: ReadonlySet<string> = new Set(['LINREG', 'BOOST', 'BUCK']);

/**
 * A netlist of which only some is drawn, such as the power tree, made fit for the diagnosis: on each rail an unknown load with a wide belief stands for what
 * is not drawn, unless all is; what the file says of nets and parts that are not there is left out, and a file that says nothing gets what the names of nets tell. `loadOf`
 * may know more of the load of a rail.
 */
export function partialCircuit(
  file: ModelFile,
  text: string,
  rows: readonly TableRow[],
  loadOf: (guess: UnknownLoad) => UnknownLoad = (guess) => guess,
): PartialResult {
  const read = readNetlist(text);
  if (!read.ok) return { ok: false, problems: read.problems };
  const { netlist } = read;
  const spec = keptSpec(file.circuit ?? defaultSpec(file, netlist), netlist);
  const drawn = drawnRows(rows, netlist);
  const loads = isWhole(file, rows, drawn)
    ? []
    : Object.keys(spec.rails).map((rail) => loadOf(guessedLoad(rail, spec.rails[rail]!, netlist)));
  const parts: WrittenPart[] = [...netlist.parts, ...loads.flatMap((load, i) => unknownLoadParts(load, i + 1))];
  const blocks =
    loads.length > 0 ? [...file.blocks, { id: NOT_DRAWN, name: 'What is not drawn yet', assembly: boardOf(file) }] : file.blocks;
  const header = drawn[0] ?? { line: 1, cells: [...PLACEMENT_FIELDS] };
  return {
    ok: true,
    file: { ...file, level: 2, blocks, circuit: spec },
    netlistText: netlistText({ ...netlist, parts }),
    rows: [header, ...drawn.slice(1), ...loads.map((_, i) => loadRow(header.cells, i + 1))],
    loads,
  };
}

/** Rows of parts that the netlist has, and of test points on nets that it has. */
function drawnRows(rows: readonly TableRow[], { parts, nodes }: Netlist): TableRow[] {
  const refs = new Set(parts.map(({ name }) => refOf(name)));
  const known = new Set(['0', '-', ...nodes]);
  const [header, ...body] = rows;
  if (!header) return [];
  const at = columnsOf(header.cells);
  const isDrawn = ({ cells }: TableRow): boolean => {
    if (refs.has((cells[at('ref')] ?? '').trim().toLowerCase())) return true;
    const nets = (cells[at('nets')] ?? '').toLowerCase().split(/\s+/);
    return (cells[at('package')] ?? '').trim().toUpperCase() === TEST_POINT && nets.every((net) => known.has(net));
  };
  return [header, ...body.filter(isDrawn)];
}

const columnsOf =
  (header: readonly string[]) =>
  (field: (typeof PLACEMENT_FIELDS)[number]): number =>
    header.findIndex((cell) => cell.trim().toLowerCase() === field);

/** Whether all is drawn: every part that is placed on the board, and parts of most of its blocks. */
function isWhole(file: ModelFile, rows: readonly TableRow[], drawn: readonly TableRow[]): boolean {
  const at = columnsOf(rows[0]?.cells ?? []);
  const [side, block] = [at('side'), at('block')];
  const onBoard = (some: readonly TableRow[]): readonly TableRow[] =>
    some.slice(1).filter(({ cells }) => cells[side]?.trim().toLowerCase() !== 'off');
  const blocks = new Set(onBoard(drawn).map(({ cells }) => cells[block]?.trim()));
  const ofBoard = file.blocks.filter(({ assembly }) => assembly === boardOf(file));
  return onBoard(rows).length === onBoard(drawn).length && ofBoard.filter(({ id }) => blocks.has(id)).length > ofBoard.length / 2;
}

/** The assembly that most blocks are of. */
function boardOf({ blocks }: ModelFile): string {
  const counts = new Map<string, number>();
  for (const { assembly } of blocks) if (assembly) counts.set(assembly, (counts.get(assembly) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'board';
}

/** A rail that a regulator or converter makes is there to feed something; on the others little hangs. */
function guessedLoad(rail: string, nominalV: number, { parts }: Netlist): UnknownLoad {
  const isFed = parts.some(({ kind, nodes }) => FEEDERS.has(kind) && nodes[1] === rail);
  return { rail, nominalV, ...(isFed ? GUESS.fed : GUESS.plain), spreads: GUESS.spreads };
}

function loadRow(header: readonly string[], place: number): TableRow {
  const of: Readonly<Record<string, string>> = { ref: `REST${place}`, x: '0', y: '0', rotation: '0', side: 'off', block: NOT_DRAWN };
  return { line: 1, cells: header.map((cell) => of[cell.trim().toLowerCase()] ?? '') };
}
