import type { DeviceModel, Evidence } from './model.ts';
import { multiply } from './posterior-over-sets.ts';
import type { StateSpace } from './state-space.ts';
import { remedyTransition, transplantTransition, type Transition } from './transitions.ts';
import { likelihoodOfRepeats, weigh, type Weighed } from './weighed.ts';

/** A change of the unit; of a remedy also the same without a word on its outcome, which is odd if that word is. */
export interface Change {
  readonly id: string;
  readonly transition: Transition;
  readonly unseen?: Transition;
}

/** A time in which the unit does not change: what was observed, and the change that ends it, if one does. */
export interface Stretch {
  /** Observations by key: repetitions stand together. */
  readonly groups: readonly (readonly Weighed[])[];
  /** Likelihood of each group, and of all together. */
  readonly likelihoods: readonly Float64Array[];
  readonly together: Float64Array;
  readonly change: Change | null;
}

export interface History {
  readonly stretches: readonly Stretch[];
  /** Blocks of slots that are empty at the end. */
  readonly absent: ReadonlySet<string>;
}

/** Evidence, oldest first, cut into stretches at each remedy and transplant, and weighed. */
export function stretchesOf(model: DeviceModel, space: StateSpace, evidence: readonly Evidence[]): History {
  const absent = new Set<string>();
  const stretches: Stretch[] = [];
  let observed: Weighed[] = [];
  const close = (change: Change | null): void => {
    stretches.push(stretchOf(space, observed, change));
    observed = [];
  };
  for (const piece of evidence) {
    if (piece.kind === 'remedy') {
      const transition = remedyTransition(model, space, piece.remedy, piece.outcome);
      const unseen = piece.outcome === 'not-tried-yet' ? undefined : remedyTransition(model, space, piece.remedy, 'not-tried-yet');
      close(unseen ? { id: piece.id, transition, unseen } : { id: piece.id, transition });
    } else if (piece.kind === 'transplant') {
      close({ id: piece.id, transition: transplantTransition(model, space, piece.blocks, piece.incoming) });
      for (const block of piece.blocks) {
        if (piece.incoming === null) absent.add(block);
        else absent.delete(block);
      }
    } else observed.push(weigh(model, space, piece, absent));
  }
  close(null);
  return { stretches, absent };
}

function stretchOf(space: StateSpace, observed: readonly Weighed[], change: Change | null): Stretch {
  const byKey = new Map<string, Weighed[]>();
  for (const piece of observed) byKey.set(piece.key, [...(byKey.get(piece.key) ?? []), piece]);
  const groups = [...byKey.values()];
  const likelihoods = groups.map(likelihoodOfRepeats);
  const together = new Float64Array(space.size).fill(1);
  for (const likelihood of likelihoods) multiply(together, likelihood);
  return { groups, likelihoods, together, change };
}
