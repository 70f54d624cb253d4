import { netsOf } from '../../core/netting/index.ts';
import type { CsvRow, Model, ModelFile } from '../models/index.ts';
import { partialCircuit } from '../netting/index.ts';
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
 * hangs on it.
 */
export function grownCircuit(grown: GrownModel, file: ModelFile, inherited: Model['circuit']): GrownCircuit {
  if (!grown.netlist) return { circuit: file.circuit ? inherited : undefined, file, problems: [] };
  const made = partialCircuit(file, grown.netlist.text, placementRows(grown));
  if (!made.ok) return { circuit: undefined, file, problems: made.problems };
  return { circuit: made.circuit, file: made.file, problems: made.laidOff };
}

/** Marked parts as rows of a placement file, the header first; the nets of their pins are those that were measured and named. */
export function placementRows({ parts, joins, names }: GrownModel): CsvRow[] {
  const { nets } = netsOf(joins, names);
  const named = new Map(nets.flatMap(({ node, isNamed, pins }) => (isNamed ? pins.map((pin) => [pin, node] as const) : [])));
  return [{ line: 1, cells: HEADER }, ...partsOf(parts).map((part, index) => ({ line: index + 2, cells: rowOf(part, named) }))];
}

const partsOf = (parts: GrownModel['parts']): GrownPart[] => [...parts.values()].filter(({ kind }) => !NO_PART.has(kind));

function rowOf(part: GrownPart, named: ReadonlyMap<string, string>): string[] {
  const { ref, x_mm, y_mm, rotation_deg, side, value, package: name, block } = part;
  const nodes = part.pins.map((_, i) => named.get(`${ref}.${i + 1}`) ?? '-');
  const nets = nodes.every((node) => node === '-') ? '' : nodes.join(' ');
  return [ref, number(x_mm), number(y_mm), number(rotation_deg), side, value, name, block ?? '', nets];
}

const number = (value: number): string => String(Number(value.toFixed(4)));
