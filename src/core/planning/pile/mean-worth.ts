import { gainOf, type ModelData } from './problem.ts';
import type { ModelWorth } from './model-worth.ts';
import type { Tails } from './tails.ts';

/**
 * The worth of a model as planning with mean outcomes sees it: as many units as the least of the mean counts, fractions counted. A
 * reference to measure against, not what the plan uses: it does not see that all slots must work in the same outcome.
 */
export function meanWorth(model: ModelData, pools: readonly Tails[], pairs: Tails | null, minuteMinor: number): ModelWorth {
  const built = Math.min(...pools.map(meanCount));
  const original = pairs ? Math.min(built, meanCount(pairs)) : 0;
  let [gain, finished] = [0, 0];
  for (let j = 1; j - 1 < built; j++) {
    const share = Math.min(1, built - (j - 1));
    const premium = model.moreMinor * Math.max(0, Math.min(1, original - (j - 1)));
    const each = share * gainOf(model, minuteMinor, j) + premium;
    if (each <= 0) break;
    gain += each;
    finished += share;
  }
  return { gainMinor: gain, variance: 0, built: finished, builtVariance: 0 };
}

function meanCount({ sure, tail }: Tails): number {
  let mean = sure;
  for (let i = 1; i < tail.length; i++) mean += tail[i]!;
  return mean;
}
