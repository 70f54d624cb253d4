import type { Weighed } from './believe-readings.ts';
import { pairApart, pairsSimulated, type Pair } from './pair-kernels.ts';
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
    const r = readings.indexOf(likelihood);
    pairs.forEach((pair, k) => {
      const apart = pairApart(
        likelihood,
        workingOf(baseline, likelihood.function),
        stands[e]!,
        draws,
        pair,
        furtherOf(baseline, pair, likelihood.point),
      );
      for (let d = 0; d < draws; d++) {
        const exact = r < 0 || k >= simulated ? NaN : values[(k * readings.length + r) * draws + d]!;
        result[k * draws + d] = Number.isNaN(exact) ? apart[d]! : exact;
      }
    });
    return result;
  });
}

const workingOf = ({ functions }: Weighed['baseline'], name: string | undefined): Float32Array | undefined =>
  name === undefined ? undefined : functions.get(name);

/** Of two rows the one that moves a point further. */
function furtherOf({ kernels }: Weighed['baseline'], [a, b]: Pair, p: number | undefined): number {
  return p === undefined || kernels.far[p * kernels.rows + a]! >= kernels.far[p * kernels.rows + b]! ? a : b;
}
