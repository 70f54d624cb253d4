import { DiagnosisError } from '../posterior-over-sets.ts';
import type { Stretch } from './evidence.ts';
import { growPairs } from './grow-pairs.ts';
import { likelihoodOf, type Likelihood } from './likelihood.ts';
import type { Pair } from './pair-kernels.ts';
import { pairLikelihoods } from './pair-likelihoods.ts';
import { secondFaults } from './second-faults.ts';
import { standing } from './standing.ts';
import { pairChances, rowChances, sumOf, type ReadingBelief, type ReadingWeights } from './reading-belief.ts';

export interface BelieveOptions {
  /** Chance that a unit sold as faulty suffers from something that is not in the model. */
  readonly unknownRate: number;
  /** Chance beforehand that nothing of the circuit is wrong; by default that of independent faults. */
  readonly noneRate?: number;
  /** How many pairs may be weighed; 0 leaves them out. */
  readonly pairs?: number;
}

/** One stretch with the likelihoods of what counts in it. */
export interface Weighed extends Stretch {
  readonly likelihoods: readonly Likelihood[];
}

const PAIRS = 24;
/**
 * The belief in each set of faults by Bayes' rule over rows × draws: readings on one board share its tolerances, so all of them weigh the same draw.
 * Faults are independent beforehand. Pairs are those that `growPairs` finds; all others are left out. A newer reading of a point, or trial of a function, within
 * a stretch replaces an older one. After a stretch that ends with a remedy, weight moves by its chance to mend each fault.
 */
export function believeReadings(stretches: readonly Stretch[], options: BelieveOptions): ReadingBelief {
  checkAlike(stretches);
  const weighed = stretches.map((stretch): Weighed => ({
    ...stretch,
    likelihoods: standing(stretch.evidence).map((each) => likelihoodOf(stretch.baseline, each)),
  }));
  const alone = filter(weighed, [], options);
  const limit = options.pairs ?? PAIRS;
  const grown = limit > 0 ? growPairs(weighed, alone.weights, limit, oddsOf(weighed)) : [];
  const pairs = limit > 0 ? [...grown, ...secondFaults(alone.weights, grown)] : [];
  const { weights, slips } = pairs.length > 0 ? filter(weighed, pairs, options, grown.length) : alone;
  return shown(weighed, weights, slips);
}

function checkAlike(stretches: readonly Stretch[]): void {
  const [first] = stretches;
  if (!first) throw new DiagnosisError('shape', 'a belief needs at least one baseline');
  const { faults, draws } = first.baseline.kernels.dictionary;
  for (const { baseline } of stretches) {
    const other = baseline.kernels.dictionary;
    if (other.draws !== draws || other.faults.length !== faults.length || other.faults.some(({ id }, i) => id !== faults[i]!.id))
      throw new DiagnosisError('shape', 'the baselines of a unit have the same faults in the same order, and as many draws');
  }
}

const faultsOf = (stretches: readonly Stretch[]) => stretches[0]!.baseline.kernels.dictionary.faults;

/** By row, rate / (1 − rate); the healthy row has 1. */
export const oddsOf = (stretches: readonly Stretch[]): Float64Array =>
  Float64Array.from([1, ...faultsOf(stretches).map(({ rate }) => rate / Math.max(1 - rate, 1e-9))]);

function priorWeights(stretches: readonly Stretch[], pairs: readonly Pair[], { unknownRate, noneRate }: BelieveOptions): ReadingWeights {
  const odds = oddsOf(stretches);
  const { draws } = stretches[0]!.baseline.kernels.dictionary;
  const faulty = sumOf(odds) - 1 + pairs.reduce((sum, [a, b]) => sum + odds[a]! * odds[b]!, 0);
  const none = noneRate === undefined ? 1 : (faulty * noneRate) / Math.max(1 - noneRate, 1e-9);
  const unknown = ((none + faulty) * unknownRate) / Math.max(1 - unknownRate, 1e-9);
  const single = odds.with(0, none);
  const paired = Float64Array.from(pairs, ([a, b]) => odds[a]! * odds[b]!);
  return { draws, rows: shared(single, draws), pairs, ofPairs: shared(paired, draws), unknown: shared(Float64Array.of(unknown), draws) };
}

/** Each chance in equal parts, one a draw. */
function shared(chances: Float64Array, draws: number): Float64Array {
  const parts = new Float64Array(chances.length * draws);
  chances.forEach((chance, i) => parts.fill(chance / draws, i * draws, (i + 1) * draws));
  return parts;
}

/** So many pieces of evidence are taken in before the weights are made to sum to 1 again: slips keep each far from where doubles end. */
const BETWEEN = 12;

function filter(
  weighed: readonly Weighed[],
  pairs: readonly Pair[],
  options: BelieveOptions,
  simulated = 0,
): { weights: ReadingWeights; slips: Map<string, number> } {
  const weights = priorWeights(weighed, pairs, options);
  const slips = new Map<string, number>();
  for (const stretch of weighed) {
    const ofPairs = pairLikelihoods(stretch, pairs, simulated);
    stretch.likelihoods.forEach((likelihood, e) => {
      multiply(weights.rows, likelihood.rows);
      multiply(weights.unknown, likelihood.unknown);
      multiply(weights.ofPairs, ofPairs[e]!);
      if (e % BETWEEN === BETWEEN - 1) normalise(weights);
    });
    normalise(weights);
    stretch.likelihoods.forEach((likelihood, e) => slips.set(likelihood.id, slipChance(weights, likelihood, ofPairs[e]!)));
    if (stretch.mends) mend(weights, mendsByRow(weighed, stretch.mends));
  }
  normalise(weights);
  return { weights, slips };
}

function multiply(weights: Float64Array, by: Float64Array): void {
  for (let i = 0; i < weights.length; i++) weights[i]! *= by[i]!;
}

function normalise({ rows, ofPairs, unknown }: ReadingWeights): void {
  const total = sumOf(rows) + sumOf(ofPairs) + sumOf(unknown);
  if (!(total > 0)) throw new DiagnosisError('impossible-evidence', 'no hypothesis allows this evidence');
  for (const part of [rows, ofPairs, unknown]) for (let i = 0; i < part.length; i++) part[i]! /= total;
}

/** Mean share of "it says nothing" in the likelihood; the unknown counts as explaining it. */
function slipChance({ rows, ofPairs }: ReadingWeights, { rows: own, slip }: Likelihood, pairs: Float64Array): number {
  let chance = 0;
  for (let i = 0; i < rows.length; i++) chance += (rows[i]! * slip) / own[i]!;
  for (let i = 0; i < ofPairs.length; i++) chance += (ofPairs[i]! * slip) / pairs[i]!;
  return Math.min(1, chance);
}

const mendsByRow = (stretches: readonly Stretch[], mends: Readonly<Record<string, number>>): Float64Array =>
  Float64Array.from([0, ...faultsOf(stretches).map(({ id }) => mends[id] ?? 0)]);

function mend({ draws, rows, pairs, ofPairs }: ReadingWeights, mends: Float64Array): void {
  for (let row = 1; row < mends.length; row++) {
    const m = mends[row]!;
    if (m === 0) continue;
    for (let d = 0; d < draws; d++) {
      rows[d]! += m * rows[row * draws + d]!;
      rows[row * draws + d]! *= 1 - m;
    }
  }
  pairs.forEach(([a, b], k) => {
    const [p, q] = [mends[a]!, mends[b]!];
    for (let d = 0; d < draws; d++) {
      const weight = ofPairs[k * draws + d]!;
      rows[d]! += weight * p * q;
      rows[b * draws + d]! += weight * p * (1 - q);
      rows[a * draws + d]! += weight * (1 - p) * q;
      ofPairs[k * draws + d]! *= (1 - p) * (1 - q);
    }
  });
}

const LEAST_SHOWN = 1e-7;

function shown(weighed: readonly Weighed[], weights: ReadingWeights, slips: ReadonlyMap<string, number>): ReadingBelief {
  const faults = faultsOf(weighed);
  const [single, paired] = [rowChances(weights), pairChances(weights)];
  const marginal = single.slice();
  weights.pairs.forEach((pair, k) => pair.forEach((row) => (marginal[row]! += paired[k]!)));
  const name = (row: number): string => faults[row - 1]!.id;
  const sets = [
    ...Array.from(single, (chance, row) => ({ faults: row === 0 ? [] : [name(row)], chance })),
    ...weights.pairs.map((pair, k) => ({ faults: pair.map(name), chance: paired[k]! })),
  ].filter(({ faults: set, chance }) => set.length === 0 || chance >= LEAST_SHOWN);
  return {
    sets: sets.sort((a, b) => b.chance - a.chance),
    none: single[0]!,
    unknown: sumOf(weights.unknown),
    marginal: new Map(faults.map(({ id }, i) => [id, marginal[i + 1]!])),
    odd: [...slips].map(([evidenceId, slip]) => ({ evidenceId, slip })).sort((a, b) => b.slip - a.slip),
    weights,
  };
}
