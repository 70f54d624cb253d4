import type { BoardFault, BoardKnowledge } from '../../boards/board-knowledge.ts';
import type { PartRemedy } from '../../boards/part-remedies.ts';
import type { Model, ModelFile } from '../../models/index.ts';
import { boardRemedies } from './board-remedies.ts';
import { measuringChecks } from './measuring-checks.ts';
import { KINDS_OF_FAULT } from './fault-kinds.ts';
import { standIns } from './stand-ins.ts';

type FaultSpec = ModelFile['faults'][number];
type StandIns = ReadonlyMap<string, readonly BoardFault[]>;

/** The model file with its circuit worked in. The faults of the circuit come first, in the order of the knowledge. */
export function boardFile(model: Model, knowledge: BoardKnowledge): { file: ModelFile; remedies: ReadonlyMap<string, PartRemedy> } {
  const stands = standIns(model, knowledge);
  const { listed, derived, parts } = boardRemedies(model, knowledge, stands);
  const { points, checks } = measuringChecks(model, knowledge);
  const file = {
    ...model.file,
    faults: [...faultsOf(model, knowledge, stands), ...model.file.faults.filter(({ id }) => !stands.has(id))],
    remedies: [...listed, ...derived.map(({ spec }) => spec)],
    points,
    checks,
    parts,
  };
  return { file, remedies: new Map(derived.map((each) => [each.spec.id, each])) };
}

/**
 * Faults of the circuit as a model file tells faults. How often a fault of the file occurs is known better than what its part's kind does: those that stand for
 * it share its rate. What the eye finds of it counts for them, too.
 */
function faultsOf({ file }: Model, knowledge: BoardKnowledge, stands: StandIns): FaultSpec[] {
  const told = new Map<string, FaultSpec[]>();
  const rates = new Map<string, number>();
  for (const fault of file.faults) {
    const own = stands.get(fault.id) ?? [];
    const all = own.reduce((sum, { rate }) => sum + rate, 0);
    for (const { id, rate } of own) {
      told.set(id, [...(told.get(id) ?? []), fault]);
      rates.set(id, (rates.get(id) ?? 0) + (all > 0 ? (fault.rate * rate) / all : 0));
    }
  }
  return knowledge.faults.map((fault) => {
    const { mode, seen, behaves } = KINDS_OF_FAULT[fault.circuit.kind];
    const { id, name, block, rate } = fault;
    return { id, name, block, mode, behaves, rate: Math.min(1, rates.get(id) ?? rate), seen: seenOf(seen, told.get(id) ?? []), shifts: {} };
  });
}

function seenOf(ofKind: FaultSpec['seen'], told: readonly FaultSpec[]): FaultSpec['seen'] {
  const seen: Record<string, number> = {};
  for (const each of [ofKind, ...told.map((fault) => fault.seen)])
    for (const [kind, chance] of Object.entries(each)) seen[kind] = Math.max(seen[kind] ?? 0, chance ?? 0);
  return seen;
}
