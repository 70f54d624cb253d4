import type { Belief } from './belief.ts';
import { multiply, normalise } from './posterior-over-sets.ts';
import type { StateSpace } from './state-space.ts';
import type { Stretch } from './stretches.ts';
import { likelihoodOfGroup, type Weighed } from './weighed.ts';

/** Evidence is odd when its chance, given all the rest, is less than this share of its chance in the state that fits it best. */
const ODD_SHARE = 0.06;

/**
 * Evidence that all the other evidence, earlier and later, contradicts: its chance given the rest, by forward and backward
 * weights over the stretches. `starts` are the weights at the start of each stretch. What no state would make likely is not
 * odd: it contradicts nothing.
 */
export function oddEvidence(
  space: Pick<StateSpace, 'size'>,
  stretches: readonly Stretch[],
  starts: readonly Float64Array[],
): Belief['odd'] {
  const odd: { evidenceId: string; chance: number }[] = [];
  let later: Float64Array = new Float64Array(space.size).fill(1);
  for (let i = stretches.length - 1; i >= 0; i--) {
    const { groups, likelihoods, together, change } = stretches[i]!;
    const start = starts[i]!;
    if (change) {
      const seen = change.transition.backward(later);
      if (change.unseen) odd.push(...ofRemedy(change.id, start, together, seen, change.unseen.backward(later)));
      later = seen;
      normalise(later);
    }
    groups.forEach((group, g) => {
      const others = new Float64Array(space.size);
      for (let s = 0; s < space.size; s++) others[s] = (start[s]! * together[s]! * later[s]!) / likelihoods[g]![s]!;
      for (const piece of group) {
        const chance = expectation(restOf(group, piece, others), piece.chance);
        if (chance < ODD_SHARE * greatest(piece.chance)) odd.push({ evidenceId: piece.id, chance });
      }
    });
    multiply(later, together);
  }
  return odd.toReversed();
}

/** Weights by all else and by the repetitions of this piece. */
function restOf(group: readonly Weighed[], piece: Weighed, others: Float64Array): Float64Array {
  if (group.length === 1) return others;
  const rest = likelihoodOfGroup(group.filter((other) => other !== piece));
  return others.map((weight, s) => weight * rest[s]!);
}

/** Mean of a chance by state under weights that need not sum to 1. */
function expectation(weights: Float64Array, chance: Float64Array): number {
  let [sum, all] = [0, 0];
  for (let s = 0; s < weights.length; s++) {
    all += weights[s]!;
    sum += weights[s]! * chance[s]!;
  }
  return sum / all;
}

function greatest(values: Float64Array): number {
  let most = 0;
  for (const value of values) if (value > most) most = value;
  return most;
}

function ofRemedy(id: string, start: Float64Array, together: Float64Array, seen: Float64Array, unseen: Float64Array): Belief['odd'] {
  let [sum, all] = [0, 0];
  for (let s = 0; s < start.length; s++) {
    const weight = start[s]! * together[s]!;
    sum += weight * seen[s]!;
    all += weight * unseen[s]!;
  }
  return sum / all < ODD_SHARE ? [{ evidenceId: id, chance: sum / all }] : [];
}
