import { groupOfRows, outcomeBands, type OutcomeBands } from '../../../core/diagnosis/readings/index.ts';
import type { DeviceModel } from '../../../core/diagnosis/model.ts';
import type { BoardFault, BoardKnowledge, BoardPoint } from '../../boards/board-knowledge.ts';
import type { PartRemedy } from '../../boards/part-remedies.ts';
import type { Model } from '../../models/index.ts';
import { deviceModelOf } from '../device-model.ts';
import { boardFile } from './board-file.ts';

/**
 * A model with its circuit worked into it: a model file whose faults are those of the circuit and those that the circuit does not hold, with remedies on
 * parts and points on nets beside its own. All advice goes by it as by any other model.
 */
export interface BoardModel {
  /** As its file has it. */
  readonly plain: Model;
  readonly model: Model;
  readonly device: DeviceModel;
  readonly knowledge: BoardKnowledge;
  readonly faults: ReadonlyMap<string, BoardFault>;
  readonly points: ReadonlyMap<string, BoardPoint>;
  /** Remedies that the model file does not list. */
  readonly remedies: ReadonlyMap<string, PartRemedy>;
  /** What readings can be told apart. */
  bands(): OutcomeBands;
  /** By fault of the circuit, the number of the group of those that no check tells apart; 0 is like a healthy board. */
  groups(): ReadonlyMap<string, number>;
  /** Written out, what of the circuit all of this depends on. */
  readonly key: string;
}

const made = new WeakMap<Model, BoardModel>();

/** The board model that such a model was made for; null for a model as its file has it. */
export const boardModelBehind = (model: Model): BoardModel | null => made.get(model) ?? null;

export function boardModelOf(plain: Model, knowledge: BoardKnowledge, key: string): BoardModel {
  const { file, remedies } = boardFile(plain, knowledge);
  const model: Model = { ...plain, file };
  let bands: OutcomeBands | undefined;
  let groups: ReadonlyMap<string, number> | undefined;
  const known: BoardModel = {
    plain,
    model,
    device: deviceOn(model, knowledge),
    knowledge,
    faults: new Map(knowledge.faults.map((fault) => [fault.id, fault])),
    points: new Map(knowledge.points.map((point) => [point.id, point])),
    remedies,
    bands: () => (bands ??= outcomeBands(knowledge.baseline.kernels)),
    groups: () => (groups ??= groupsOf(knowledge)),
    key,
  };
  made.set(model, known);
  return known;
}

function groupsOf({ baseline, faults }: BoardKnowledge): ReadonlyMap<string, number> {
  const group = groupOfRows(baseline);
  return new Map(faults.map(({ id }, i) => [id, group[i + 1]!]));
}

function deviceOn(model: Model, knowledge: BoardKnowledge): DeviceModel {
  const device = deviceModelOf(model);
  const faults = device.faults.map((fault, i) => {
    const known = knowledge.faults[i];
    return known ? { ...fault, ...(known.refs[0] === undefined ? {} : { part: known.refs[0] }), ...worksWith(knowledge, 1 + i) } : fault;
  });
  return { ...device, faults, parts: model.circuit!.parts.length };
}

/** Chance over the drawn boards that each function works with a fault, against the healthy board; nothing while it is not computed. */
function worksWith({ baseline }: BoardKnowledge, row: number): { works?: Readonly<Record<string, number>> } {
  const { draws } = baseline.kernels.dictionary;
  const mean = (values: Float32Array, at: number): number => {
    let sum = 0;
    for (let d = 0; d < draws; d++) sum += values[at * draws + d]!;
    return sum / draws;
  };
  const works: Record<string, number> = {};
  for (const [name, values] of baseline.functions) {
    const chance = mean(values, row) / Math.max(mean(values, 0), 0.01);
    if (!Number.isNaN(chance)) works[name] = Math.min(1, chance);
  }
  return Object.keys(works).length > 0 ? { works } : {};
}
