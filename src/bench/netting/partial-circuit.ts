import { readNetlist, refOf, type Netlist } from '../../core/circuit/index.ts';
import { netlistText, unknownLoadParts, type TableRow, type UnknownLoad, type WrittenPart } from '../../core/netting/index.ts';
import { modelCircuit, TEST_POINT, type CircuitProblems, type CircuitSpec, type ModelCircuit, type ModelFile } from '../models/index.ts';
import { cellsOf, completeRows, rowOf } from './complete-rows.ts';
import { defaultSpec } from './default-spec.ts';
import { keptSpec } from './kept-spec.ts';

/** Block of what is not drawn, or of which nobody has said where it belongs. */
const NOT_DRAWN = 'not-drawn';

/** A circuit of which perhaps only a part is drawn, made whole by unknown loads. */
export interface PartialCircuit {
  readonly ok: true;
  /** The file with its section `circuit`, and the block `not-drawn` where something is of it. */
  readonly file: ModelFile & { readonly circuit: CircuitSpec };
  readonly circuit: ModelCircuit;
  readonly loads: readonly UnknownLoad[];
  /** Clauses about placed parts that the circuit takes for being off the board, because their package or pins are not known. */
  readonly laidOff: readonly string[];
}

export type PartialResult = PartialCircuit | { readonly ok: false; readonly problems: readonly string[] };

/** What is taken for a load of which nothing is known, W and Ω: within a factor of 2.7 either way on two boards of three. Common practice, no source. */
const GUESS = { fed: { watt: 0.1, ohm: 3e3 }, plain: { watt: 0.015, ohm: 1e5 }, spreads: { ampere: 1, ohm: 1 } } as const;
const FEEDERS: ReadonlySet<string> = new Set(['LINREG', 'BOOST', 'BUCK']);
const MOST_PROBLEMS = 20;

/**
 * A netlist of which only some is drawn, such as the power tree, made fit for the diagnosis: on each rail an unknown load with a wide belief stands for what
 * is not drawn, unless all is; what the file says of nets and parts that are not there is left out, and a file that says nothing gets what the names of
 * nets tell. Parts of the netlist that are not placed yet are off the board, and so are those whose pads are not known.
 */
export function partialCircuit(file: ModelFile, text: string, rows: readonly TableRow[], commaIsDecimal = false): PartialResult {
  const read = readNetlist(text);
  if (!read.ok) return { ok: false, problems: read.problems.map(({ line, message }) => `line ${line}: ${message}`) };
  const { netlist } = read;
  const spec = keptSpec(file.circuit ?? defaultSpec(file, netlist), netlist);
  const drawn = drawnRows(rows, netlist);
  const fed = fedRails(spec, netlist);
  const isWhole = feedsItself(fed, netlist) || isAllPlaced(file, rows, drawn);
  const loads = isWhole ? [] : Object.entries(spec.rails).map(([rail, volt]) => guessedLoad(rail, volt, fed.includes(rail)));
  const parts: WrittenPart[] = [...netlist.parts, ...loads.flatMap((load, i) => unknownLoadParts(load, i + 1))];
  const placed = [...completeRows(drawn, netlist, file, NOT_DRAWN), ...loads.map((_, i) => loadRow(i + 1))];
  const filled = { ...file, level: 2 as const, blocks: blocksWith(file, placed), circuit: spec };
  const whole = netlistText({ ...netlist, parts });
  return made(filled, whole, placed, commaIsDecimal, loads);
}

function made(
  file: PartialCircuit['file'],
  text: string,
  rows: readonly TableRow[],
  commaIsDecimal: boolean,
  loads: readonly UnknownLoad[],
): PartialResult {
  const first = modelCircuit(file, file.circuit, text, { rows, commaIsDecimal });
  if (first.ok) return { ok: true, file, circuit: first.circuit, loads, laidOff: [] };
  const bad = new Map(first.problems.placement.map(({ line, field, message }) => [line, `${field} ${message}`]));
  const off = rows.map((row) => (bad.has(row.line) ? takenOff(row) : row));
  const second = modelCircuit(file, file.circuit, text, { rows: off, commaIsDecimal });
  if (!second.ok) return { ok: false, problems: clauses(second.problems) };
  const laidOff = rows.flatMap(({ line, cells: [ref] }) => (bad.has(line) ? [`${ref}: ${bad.get(line)}`] : []));
  return { ok: true, file, circuit: second.circuit, loads, laidOff };
}

const clauses = ({ netlist, placement, model }: CircuitProblems): string[] =>
  [
    ...netlist.map(({ message }) => message),
    ...placement.map(({ field, message }) => `${field}: ${message}`),
    ...model.map(({ path, message }) => `${path.join('.')} ${message}`),
  ].slice(0, MOST_PROBLEMS);

/** A part that is known to the circuit alone. */
function takenOff({ line, cells }: TableRow): TableRow {
  const { ref, value, block } = cellsOf(HEADER.cells, { line, cells });
  return rowOf(line, { ref, value, block, side: 'off' });
}

const HEADER = completeRows([], { title: '', parts: [], nodes: [], temperatureK: 300, notes: [] }, { blocks: [] }, '')[0]!;

/** Rows of parts that the netlist has, and of test points on nets that it has. */
function drawnRows(rows: readonly TableRow[], { parts, nodes }: Netlist): TableRow[] {
  const refs = new Set(parts.map(({ name }) => refOf(name)));
  const known = new Set(['0', '-', ...nodes]);
  const [header, ...body] = rows;
  if (!header) return [];
  return [
    header,
    ...body.filter((row) => {
      const { ref, nets, package: name } = cellsOf(header.cells, row);
      if (refs.has(ref.toLowerCase())) return true;
      return (
        name.toUpperCase() === TEST_POINT &&
        nets !== '' &&
        nets
          .toLowerCase()
          .split(/\s+/)
          .every((net) => known.has(net))
      );
    }),
  ];
}

/** Whether what draws from the rails is drawn: a load on half of those that are made, at least. */
function feedsItself(fed: readonly string[], { parts }: Netlist): boolean {
  const loaded = new Set(parts.flatMap(({ kind, nodes }) => (kind === 'LOAD' ? nodes : [])));
  return fed.length > 0 && fed.filter((rail) => loaded.has(rail)).length >= fed.length / 2;
}

/** Whether every part that is placed on the board is drawn, and parts of most of its blocks. */
function isAllPlaced(file: ModelFile, rows: readonly TableRow[], drawn: readonly TableRow[]): boolean {
  const onBoard = ([header, ...body]: readonly TableRow[]) =>
    body
      .map((row) => cellsOf(header!.cells, row))
      .filter(({ side, package: name }) => side.toLowerCase() !== 'off' && name.toUpperCase() !== TEST_POINT);
  const blocks = new Set(onBoard(drawn).map(({ block }) => block));
  const ofBoard = file.blocks.filter(({ assembly }) => assembly === boardOf(file));
  return onBoard(rows).length === onBoard(drawn).length && ofBoard.filter(({ id }) => blocks.has(id)).length > ofBoard.length / 2;
}

/** The assembly that most blocks are of. */
function boardOf({ blocks }: ModelFile): string {
  const counts = new Map<string, number>();
  for (const { assembly } of blocks) if (assembly) counts.set(assembly, (counts.get(assembly) ?? 0) + 1);
  return [...counts].sort((a, b) => b[1] - a[1])[0]?.[0] ?? 'board';
}

function blocksWith(file: ModelFile, rows: readonly TableRow[]): ModelFile['blocks'] {
  const isUsed = rows.some((row) => cellsOf(HEADER.cells, row).block === NOT_DRAWN);
  if (!isUsed || file.blocks.some(({ id }) => id === NOT_DRAWN)) return file.blocks;
  return [...file.blocks, { id: NOT_DRAWN, name: 'What is not drawn yet', assembly: boardOf(file) }];
}

/** Rails that a regulator or converter makes. */
const fedRails = ({ rails }: CircuitSpec, { parts }: Netlist): string[] =>
  Object.keys(rails).filter((rail) => parts.some(({ kind, nodes }) => FEEDERS.has(kind) && nodes[1] === rail));

/** A rail that is made is there to feed something; on the others little hangs. */
function guessedLoad(rail: string, nominalV: number, isFed: boolean): UnknownLoad {
  const { watt, ohm } = isFed ? GUESS.fed : GUESS.plain;
  return { rail, nominalV, ampere: watt / nominalV, ohm, spreads: GUESS.spreads };
}

const loadRow = (place: number): TableRow => rowOf(1, { ref: `REST${place}`, side: 'off', block: NOT_DRAWN });
