import { median } from '../numeric/index.ts';

/** How many own times weigh as much as what the model says. Common practice, no source. */
const MODEL_WEIGHT = 2;
/** A time further than this factor from the median is an interruption or a forgotten clock, and is cut to it. */
const CUT = 3;

/**
 * Minutes to expect of a step: the model's word and the person's own times, the model counting as two of them. Times are
 * averaged as logarithms, since minutes spread in proportion; one that is beyond three times the median, or below a
 * third of it, counts as if at that edge. Times of 0 and below say nothing. The model's minutes where there is no time.
 */
export function learnedMinutes(modelMinutes: number, times: readonly number[]): number {
  const counted = times.filter((time) => time > 0);
  if (counted.length === 0) return modelMinutes;
  const middle = median(counted);
  const logs = counted.map((time) => Math.log(Math.min(CUT * middle, Math.max(middle / CUT, time))));
  const [prior, weight] = modelMinutes > 0 ? [Math.log(modelMinutes), MODEL_WEIGHT] : [0, 0];
  return Math.exp((prior * weight + logs.reduce((sum, log) => sum + log, 0)) / (weight + logs.length));
}
