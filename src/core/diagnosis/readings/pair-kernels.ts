import { METER_SCALES } from '../meter-scale.ts';
import { LEAK, KernelDensity, outcomeChance, slipDensity, type Likelihood } from './likelihood.ts';
import { STRAY_OL } from './kernels.ts';
import type { Baseline, ReadingEvidence } from './evidence.ts';

/** Indices of two rows, the lower first. */
export type Pair = readonly [number, number];

/** Likelihoods of one pair by draw: as of whichever of the two moves the point further. */
export function pairApart(
  likelihood: Likelihood,
  works: Float32Array | undefined,
  outcome: ReadingEvidence,
  draws: number,
  pair: Pair,
  further: number,
): Float64Array {
  if (outcome.kind === 'reading') return likelihood.rows.subarray(further * draws, (further + 1) * draws);
  const honesty = outcome.honesty ?? 1;
  return Float64Array.from({ length: draws }, (_, d) => {
    const both = works![pair[0] * draws + d]! * works![pair[1] * draws + d]!;
    return honesty * outcomeChance(outcome.outcome, both) + (1 - honesty) / 3;
  });
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
