import { netsOf, tracedNetlist, type TracedNetlist } from '../../core/netting/index.ts';
import type { CsvRow, Model, ModelFile } from '../models/index.ts';
import { markedPart, nodesOfPins, partialCircuit } from '../netting/index.ts';
import type { GrownModel, GrownPart } from './grown-model.ts';

/** Kinds of marks that are no parts of a circuit. */
const NO_PART: ReadonlySet<string> = new Set(['hole']);
const HEADER = ['ref', 'x', 'y', 'rotation', 'side', 'value', 'package', 'block', 'nets'];

/** The circuit of a grown model, with the file as the circuit fills it in, and what keeps it from being used, or a part from being laid out, as clauses. */
export interface GrownCircuit {
  readonly circuit: Model['circuit'];
  readonly file: ModelFile;
  readonly problems: readonly string[];
}

/**
 * Of its own netlist and marked parts where it has a netlist, however much of the board that holds; else the inherited one, as long as the file says what
 * hangs on it; else of what was marked and probed, once something is fed.
 */
export function grownCircuit(grown: GrownModel, file: ModelFile, inherited: Model['circuit']): GrownCircuit {
  if (!grown.netlist && file.circuit && inherited) return { circuit: inherited, file, problems: [] };
  const traced = grown.netlist ? null : tracedOf(grown, file);
  const text = grown.netlist?.text ?? traced?.text;
  if (text === undefined) return { circuit: undefined, file, problems: [] };
  const made = partialCircuit(file, text, traced ? tracedRows(grown) : placementRows(grown));
  if (!made.ok) return { circuit: undefined, file, problems: made.problems };
  return { circuit: made.circuit, file: made.file, problems: [...made.laidOff, ...(traced?.left ?? []).map(leftWords)] };
}

/** The netlist of what was marked and probed; null while nothing is fed. */
export function tracedOf({ parts, joins, names }: GrownModel, { cell }: Pick<ModelFile, 'cell'>): TracedNetlist | null {
  const { nodeOf } = netsOf(joins, names);
  const traced = partsOf(parts).filter(({ kind }) => kind !== 'test-point');
  const drawn = traced.map((part) => {
    const { ref, value, nodes } = markedPart(part, nodeOf);
    return { ref, kind: part.kind, value, nodes };
  });
  return tracedNetlist(drawn, cell?.volts ?? null);
}

const WHY: Readonly<Record<TracedNetlist['left'][number]['why'], string>> = {
  'not-probed': 'a pin of it was not probed',
  'no-value': 'it has no value',
  'no-law': 'what it does is not known from its kind',
};
const leftWords = ({ ref, why }: TracedNetlist['left'][number]): string => `${ref} is not in the circuit: ${WHY[why]}`;

/** Marked parts as rows of a placement file, the header first; the nets of their pins are those that were measured and named. */
export function placementRows({ parts, joins, names }: GrownModel): CsvRow[] {
  const { nets } = netsOf(joins, names);
  return rowsOf(parts, new Map(nets.flatMap(({ node, isNamed, pins }) => (isNamed ? pins.map((pin) => [pin, node] as const) : []))));
}

/** The same beside a netlist that was traced: its nodes are those of all nets, named or not. */
const tracedRows = ({ parts, joins, names }: GrownModel): CsvRow[] => rowsOf(parts, netsOf(joins, names).nodeOf);

const rowsOf = (parts: GrownModel['parts'], nodeOf: ReadonlyMap<string, string>): CsvRow[] => [
  { line: 1, cells: HEADER },
  ...partsOf(parts).map((part, index) => ({ line: index + 2, cells: rowOf(part, nodeOf) })),
];

const partsOf = (parts: GrownModel['parts']): GrownPart[] => [...parts.values()].filter(({ kind }) => !NO_PART.has(kind));

function rowOf(part: GrownPart, nodeOf: ReadonlyMap<string, string>): string[] {
  const { ref, x_mm, y_mm, rotation_deg, side, value, package: name, block } = part;
  const nodes = nodesOfPins(part, nodeOf).map((node) => node ?? '-');
  const nets = nodes.every((node) => node === '-') ? '' : nodes.join(' ');
  return [ref, number(x_mm), number(y_mm), number(rotation_deg), side, value, name, block ?? '', nets];
}

const number = (value: number): string => String(Number(value.toFixed(4)));
