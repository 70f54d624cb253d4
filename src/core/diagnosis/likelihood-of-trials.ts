import type { Behaviours } from './behaviour.ts';
import type { Behaviour } from './model.ts';

/** Of what a trial tells, its repetition tells this share: the unit and the person are the same. Common practice, no source. */
export const REPEAT_SHARE = 0.1;

const WAYS = ['works', 'comes-and-goes', 'fails'] as const;

/**
 * The likelihood of trials of one function with the same accessories, by state; at least one. A repetition of an outcome
 * counts with the exponent REPEAT_SHARE. Outcomes that differ count in full: together they are one of coming and going.
 */
export function likelihoodOfTrials(behaviours: Behaviours, outcomes: readonly Behaviour[]): Float64Array {
  const seen = WAYS.filter((way) => outcomes.includes(way));
  const together = behaviours[seen.length === 1 ? seen[0]! : 'comes-and-goes'].slice();
  for (const way of seen) {
    const again = outcomes.filter((outcome) => outcome === way).length - 1;
    if (again === 0) continue;
    const chance = behaviours[way];
    for (let s = 0; s < together.length; s++) together[s]! *= chance[s]! ** (REPEAT_SHARE * again);
  }
  return together;
}
