import type { SharedNumber } from '../events/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { weightOf } from './job.ts';

/** What another bench has learned of a number, as it counts here. */
export interface TakenIn {
  readonly mean: number;
  readonly spread: number;
  /** As many jobs of one's own. */
  readonly weight: number;
  readonly job: LearnedView['numbers'][number]['jobs'][number];
}

/** However many jobs a bundle claims, a number of it never counts for more jobs of one's own: what is wrong in it can be lived down. */
const MOST_JOBS = 20;

/** Every bundle that holds the number, in the order in which they were taken in; `name` is that of the learned number, for its resets. */
export function takenIn(
  state: Readonly<BenchState>,
  modelId: string,
  about: SharedNumber['about'],
  of: string,
  name = `${about}.${modelId}.${of}`,
): TakenIn[] {
  return state.learning.takenIn.flatMap(({ model_id, numbers, weight: each, from, eventId, at }) => {
    const found = model_id === modelId ? numbers.find((number) => number.about === about && number.of === of) : undefined;
    const weight = found ? Math.min(MOST_JOBS, found.jobs * each) * weightOf(state, name, at) : 0;
    if (!found || weight === 0) return [];
    const text = `Taken in from "${from}": ${Number(found.jobs.toPrecision(3))} jobs`;
    return [{ mean: found.mean, spread: found.spread, weight, job: { event_id: eventId, item_id: null, at, text, weight } }];
  });
}

/** Two values of that mean and spread, one spread below and one above, with half of the weight each. */
export const twoValues = ({ mean, spread, weight }: Pick<TakenIn, 'mean' | 'spread' | 'weight'>) =>
  [mean - spread, mean + spread].map((value) => ({ value, weight: weight / 2 }));

/** A learned number, and what of it comes from this bench's own jobs, as it may be shared; null where there are none. */
export interface LearnedNumber {
  readonly number: LearnedView['numbers'][number];
  readonly own: SharedNumber | null;
}

/** Rounded, so that nothing of a single job can be read from many digits. */
export function shared(about: SharedNumber['about'], of: string, jobs: number, mean: number, spread = 0): SharedNumber | null {
  if (!(jobs > 0)) return null;
  return {
    about,
    of,
    mean: Number(mean.toPrecision(3)),
    spread: Number(spread.toPrecision(2)),
    jobs: Number(Math.max(0.1, jobs).toFixed(1)),
  };
}
