import type { Pattern } from '../../../core/fit/index.ts';
import { whichFit, type Candidate } from '../../../bench/fit/index.ts';

/** No answer takes longer, ms: the page must not freeze. */
const LONGEST_MS = 4000;

/** Which of these fit, as far as it can be said in some seconds. */
export function whichFitInTime(place: Pattern, candidates: readonly Candidate[]): ReturnType<typeof whichFit> {
  const until = performance.now() + LONGEST_MS;
  return whichFit(place, candidates, () => performance.now() > until);
}
