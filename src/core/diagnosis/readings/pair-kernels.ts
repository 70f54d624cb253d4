import { METER_SCALES } from '../meter-scale.ts';
import { LEAK, KernelDensity, slipDensity, type Likelihood, type TrialLaw } from './likelihood.ts';
import { STRAY_OL } from './kernels.ts';
import type { Baseline } from './evidence.ts';

/** Indices of two rows, the lower first. */
export type Pair = readonly [number, number];

/** Likelihoods of one pair by draw, written to `into` from `at` on: a reading is as of whichever of the two moves the point further. */
export function pairApart(
  likelihood: Likelihood,
  working: Working | undefined,
  pair: Pair,
  further: number,
  into: Float64Array,
  at: number,
): void {
  const draws = likelihood.unknown.length;
  if (!working) {
    for (let d = 0; d < draws; d++) into[at + d] = likelihood.rows[further * draws + d]!;
    return;
  }
  const { works, law } = working;
  for (let d = 0; d < draws; d++) into[at + d] = law.at(works[pair[0] * draws + d]! * works[pair[1] * draws + d]!);
}

/** A trial: chance that the function works, by row and draw, and what its outcome makes of that. */
export interface Working {
  readonly works: Float32Array;
  readonly law: TrialLaw;
}

/** Likelihoods of the readings of simulated pairs: pair by pair, reading by reading, draw by draw. NaN values leave the guess of `pairApart`. */
export function pairsSimulated(baseline: Baseline, pairs: readonly Pair[], readings: readonly Likelihood[]): Float64Array {
  const { kernels, simulate } = baseline;
  const { draws, points } = kernels.dictionary;
  const result = new Float64Array(pairs.length * readings.length * draws).fill(NaN);
  if (!simulate || readings.length === 0) return result;
  const at = readings.map(({ point }) => point!);
  const values = simulate(
    pairs.map(([a, b]) => [a - 1, b - 1] as const),
    at,
  );
  readings.forEach(({ value }, r) => {
    const p = at[r]!;
    const scale = METER_SCALES[points[p]!.mode];
    const density = new KernelDensity(kernels, p, value!);
    const slip = slipDensity(kernels, p, value!);
    pairs.forEach(([a, b], k) => {
      const width = Math.max(kernels.width[p * kernels.rows + a]!, kernels.width[p * kernels.rows + b]!);
      for (let d = 0; d < draws; d++) {
        const found = values[(k * draws + d) * readings.length + r]!;
        if (Number.isNaN(found)) continue;
        const own = found === Infinity ? density.at(NaN, width, 1 - STRAY_OL) : density.at(scale.of(found), width, STRAY_OL);
        result[(k * readings.length + r) * draws + d] = (1 - LEAK) * own + LEAK * slip;
      }
    });
  });
  return result;
}
