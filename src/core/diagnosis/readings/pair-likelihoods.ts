import type { Weighed } from './believe-readings.ts';
import type { ReadingEvidence } from './evidence.ts';
import { trialLaw } from './likelihood.ts';
import { pairApart, pairsSimulated, type Pair, type Working } from './pair-kernels.ts';
import { standing } from './standing.ts';

/**
 * For each piece of evidence of a stretch its likelihoods by pair and draw: readings of the first `simulated` pairs as simulated where that can be done, all
 * else as of the two faults apart.
 */
export function pairLikelihoods({ baseline, evidence, likelihoods }: Weighed, pairs: readonly Pair[], simulated: number): Float64Array[] {
  const { draws } = baseline.kernels.dictionary;
  const stands = standing(evidence);
  const readings = likelihoods.filter(({ point }) => point !== undefined);
  const values = pairsSimulated(baseline, pairs.slice(0, simulated), readings);
  return likelihoods.map((likelihood, e) => {
    const result = new Float64Array(pairs.length * draws);
    const working = workingOf(baseline, stands[e]!);
    pairs.forEach((pair, k) => pairApart(likelihood, working, pair, furtherOf(baseline, pair, likelihood.point), result, k * draws));
    const r = readings.indexOf(likelihood);
    if (r >= 0) overwrite(result, values, r, readings.length, draws);
    return result;
  });
}

/** Puts what was simulated of reading `r` in place of what the two faults do apart. */
function overwrite(result: Float64Array, simulated: Float64Array, r: number, readings: number, draws: number): void {
  const pairs = simulated.length / (readings * draws);
  for (let k = 0; k < pairs; k++)
    for (let d = 0; d < draws; d++) {
      const exact = simulated[(k * readings + r) * draws + d]!;
      if (!Number.isNaN(exact)) result[k * draws + d] = exact;
    }
}

const workingOf = ({ functions }: Weighed['baseline'], each: ReadingEvidence): Working | undefined =>
  each.kind === 'function' ? { works: functions.get(each.function)!, law: trialLaw(each) } : undefined;

/** Of two rows the one that moves a point further. */
function furtherOf({ kernels }: Weighed['baseline'], [a, b]: Pair, p: number | undefined): number {
  return p === undefined || kernels.far[p * kernels.rows + a]! >= kernels.far[p * kernels.rows + b]! ? a : b;
}
