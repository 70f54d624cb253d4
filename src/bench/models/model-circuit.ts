import { readNetlist, refOf, type Netlist, type NetlistProblem, type Part } from '../../core/circuit/index.ts';
import { nearest } from '../rules/nearest.ts';
import type { CircuitSpec } from './circuit-spec.ts';
import { circuitReferences } from './circuit-references.ts';
import { elementsByRef } from './part-names.ts';
import { netsOfPins } from './pin-nets.ts';
import { placementFrom, type PlacementProblem, type PlacementRow } from './placement-csv.ts';
import type { ModelProblem } from './problem.ts';
import type { CsvRow } from './readings-csv.ts';
import type { ModelFile } from './schema.ts';

/** A part as a person knows it: its reference and place, and the parts of the netlist that describe it. */
export interface BoardPart extends Omit<PlacementRow, 'line'> {
  /** Names of its parts in the netlist, in order; none for a test point. */
  readonly elements: readonly string[];
}

/** The circuit of a model at level 2. Plain data: it can be kept as JSON and sent to another thread. */
export interface ModelCircuit {
  readonly netlist: Netlist;
  readonly parts: readonly BoardPart[];
}

/** Everything that is wrong with a circuit, by the file in which it is to be put right. */
export interface CircuitProblems {
  readonly netlist: readonly NetlistProblem[];
  readonly placement: readonly PlacementProblem[];
  readonly model: readonly ModelProblem[];
}

export type CircuitResult =
  { readonly ok: true; readonly circuit: ModelCircuit } | { readonly ok: false; readonly problems: CircuitProblems };

/**
 * The circuit of a model from the text of its netlist and the rows of its placement: both read, joined by reference, and held against
 * the section `circuit` of the model file. Which reference a part of the netlist belongs to is said by its name: `RF1` and `RJ4_1` are of F1 and
 * J4, `R12` is R12 (docs/model-format.md).
 */
export function modelCircuit(
  file: Pick<ModelFile, 'blocks' | 'board' | 'points'>,
  spec: CircuitSpec,
  netlistText: string,
  placement: { readonly rows: readonly CsvRow[]; readonly commaIsDecimal: boolean },
): CircuitResult {
  const read = readNetlist(netlistText);
  const { placed, problems } = placementFrom(placement.rows, file, placement.commaIsDecimal);
  if (!read.ok || problems.length > 0)
    return { ok: false, problems: { netlist: read.ok ? [] : read.problems, placement: problems, model: [] } };
  const { netlist } = read;
  const byRef = elementsByRef(netlist.parts);
  const joined = placed.map((row) => joinOne(row, byRef.get(row.ref.toLowerCase()) ?? [], netlist));
  const found = {
    netlist: [...byRef].flatMap(([ref, [first]]) => (isPlaced(ref, placed) ? [] : [unplaced(first!, placed)])),
    placement: joined.flatMap(({ bad }) => bad),
    model: circuitReferences(spec, netlist),
  };
  if (found.netlist.length + found.placement.length + found.model.length > 0) return { ok: false, problems: found };
  return { ok: true, circuit: { netlist, parts: joined.map(({ part }) => part) } };
}

function joinOne(
  { line, ...row }: PlacementRow,
  elements: readonly Part[],
  netlist: Netlist,
): { part: BoardPart; bad: PlacementProblem[] } {
  const nets = netsOfPins(row, elements, netlist);
  const part = { ...row, nets: nets.ok ? nets.nets : [], elements: elements.map(({ name }) => name) };
  return { part, bad: nets.ok ? [] : [{ ok: false, code: 'model-placement', line, ...nets.bad }] };
}

const isPlaced = (ref: string, placed: readonly PlacementRow[]): boolean => placed.some((row) => row.ref.toLowerCase() === ref);

function unplaced({ name, line, column }: Part, placed: readonly PlacementRow[]): NetlistProblem {
  const ref = refOf(name).toUpperCase();
  const known = nearest(
    ref,
    placed.map((row) => row.ref),
  );
  return {
    line,
    column,
    code: 'unknown-name',
    message: `${name} is a part of ${ref}, which the placement does not have; known there: ${known}`,
  };
}
