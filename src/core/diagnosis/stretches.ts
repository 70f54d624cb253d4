import type { DeviceModel } from './model.ts';
import { standing } from './observation.ts';
import { multiply } from './posterior-over-sets.ts';
import type { StateSpace } from './state-space.ts';
import type { Time } from './times.ts';
import { remedyTransition, transplantTransition, type Transition } from './transitions.ts';
import { likelihoodOfGroup, weigh, type Weighed } from './weighed.ts';

/** A change of the unit; of a remedy also the same without a word on its outcome, which is odd if that word is. */
export interface Change {
  readonly id: string;
  readonly transition: Transition;
  readonly unseen?: Transition;
}

/** A time in which the unit does not change: what was observed, and the change that ends it, if one does. */
export interface Stretch {
  /** Observations that still count, by key: trials of the same stand together. */
  readonly groups: readonly (readonly Weighed[])[];
  /** Likelihood of each group, and of all together. */
  readonly likelihoods: readonly Float64Array[];
  readonly together: Float64Array;
  readonly change: Change | null;
}

/** Evidence, oldest first, as stretches that are weighed. */
export function stretchesOf(model: DeviceModel, space: StateSpace, times: readonly Time[]): Stretch[] {
  return times.map(({ observed, change, absent }) => {
    const weighed = standing(observed).map((piece) => weigh(model, space, piece, absent));
    return stretchOf(space, weighed, change && changeOf(model, space, change));
  });
}

/** What ended a time. */
export function changeOf(model: DeviceModel, space: StateSpace, piece: NonNullable<Time['change']>): Change {
  const { id } = piece;
  if (piece.kind === 'transplant') return { id, transition: transplantTransition(model, space, piece.blocks, piece.incoming) };
  const transition = remedyTransition(model, space, piece.remedy, piece.outcome);
  if (piece.outcome === 'not-tried-yet') return { id, transition };
  return { id, transition, unseen: remedyTransition(model, space, piece.remedy, 'not-tried-yet') };
}

/** One time from what was observed, each piece weighed. */
export function stretchOf(space: Pick<StateSpace, 'size'>, observed: readonly Weighed[], change: Change | null): Stretch {
  const byKey = new Map<string, Weighed[]>();
  for (const piece of observed) byKey.set(piece.key, [...(byKey.get(piece.key) ?? []), piece]);
  const groups = [...byKey.values()];
  const likelihoods = groups.map(likelihoodOfGroup);
  const together = new Float64Array(space.size).fill(1);
  for (const likelihood of likelihoods) multiply(together, likelihood);
  return { groups, likelihoods, together, change };
}
