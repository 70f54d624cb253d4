import type { Model } from '../models/index.ts';
import type { FaultName } from '../views/index.ts';
import { boardModelBehind } from './board/board-model.ts';

const known = new WeakMap<Model, ReadonlyMap<string, FaultName>>();

/** A fault by its name, with its block, and with its parts where the circuit is known. */
export function namedFault(model: Model, id: string): FaultName {
  const names = known.get(model) ?? namesOf(model);
  known.set(model, names);
  return names.get(id) ?? { id, name: id, block: '', refs: [] };
}

function namesOf(model: Model): ReadonlyMap<string, FaultName> {
  const board = boardModelBehind(model);
  return new Map(model.file.faults.map(({ id, name, block }) => [id, { id, name, block, refs: [...(board?.faults.get(id)?.refs ?? [])] }]));
}
