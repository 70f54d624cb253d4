import type { Proposal } from './compare.ts';

/** The proposals that a strictness lets through: 0 shows all, 1 only what is all but sure; 0.5 what is likelier real than not. Ranked as they came. */
export function atStrictness<P extends Pick<Proposal, 'chance'>>(proposals: readonly P[], strictness: number): P[] {
  const least = strictness <= 0.5 ? strictness : 0.5 + 0.49 * (2 * strictness - 1);
  return proposals.filter(({ chance }) => chance >= least);
}
