import type { DeviceModel } from './model.ts';
import { faultChances, type StateSpace } from './state-space.ts';

/** What is believed of a unit now. */
export interface Belief {
  /** Every set of up to two faults with its chance, most likely first; the empty one is "nothing is wrong". */
  readonly sets: readonly { readonly faults: readonly string[]; readonly chance: number }[];
  /** Chance that nothing is wrong, apart from what is absent. */
  readonly none: number;
  /** Chance of something that is not in the model. */
  readonly unknown: number;
  /** Chance of each fault, alone or with another. */
  readonly marginal: ReadonlyMap<string, number>;
  /** Evidence that all the rest contradicts, with its chance given the rest; of a reading, the chance of its band. */
  readonly odd: readonly { readonly evidenceId: string; readonly chance: number }[];
  /** The same as numbers by state, for what computes on from here. */
  readonly space: StateSpace;
  readonly weights: Float64Array;
  /** Blocks of slots that are empty now. */
  readonly absent: ReadonlySet<string>;
}

/** A belief from weights that sum to 1. */
export function beliefOf(
  model: DeviceModel,
  space: StateSpace,
  weights: Float64Array,
  absent: ReadonlySet<string>,
  odd: Belief['odd'],
): Belief {
  const names = space.members.map((faults) => faults.map((fault) => model.faults[fault]!.id));
  const sets = names.flatMap((faults, state) => (state === space.unknown ? [] : [{ faults, chance: weights[state]! }]));
  const byFault = faultChances(space, weights);
  return {
    sets: sets.sort((a, b) => b.chance - a.chance),
    none: weights[space.none]!,
    unknown: weights[space.unknown]!,
    marginal: new Map(model.faults.map(({ id }, fault) => [id, byFault[fault]!])),
    odd,
    space,
    weights,
    absent,
  };
}
