import type { Kernels } from './kernels.ts';
import { LEAK } from './likelihood.ts';
import { inverse, MIXED, MOST_BANDS, UNSEEN, type OutcomeBands } from './outcome-bands.ts';
import { pairChances, rowChances, sumOf, type ReadingWeights } from './reading-belief.ts';

/** Rows that are less likely than this are not looked into. */
const LEAST = 2e-4;
const BANDS = MOST_BANDS + 1;
/** An outcome less likely than this is not looked into. */
const LEAST_OUTCOME = 2e-3;
/** Share of readings that a trouble outside the model moves anywhere. */
export const UNKNOWN_MOVED = 0.3;

interface Active {
  readonly a: number;
  readonly b: number;
  /** By draw. */
  readonly weights: Float64Array;
  readonly chance: number;
}

/** How a belief is shared among the outcomes of reading one point. */
export class OutcomeShares {
  /** By row, with pairs halved between their two; what they lack of 1 is unknown. */
  readonly chances: Float64Array;
  private readonly active: readonly Active[];
  private readonly mass: number;
  private readonly unknown: number;
  private readonly own = new Float64Array(BANDS);
  private readonly total = new Float64Array(BANDS);

  constructor(
    weights: ReadingWeights,
    private readonly kernels: Kernels,
    private readonly bands: OutcomeBands,
  ) {
    const { draws, pairs } = weights;
    const [single, paired] = [rowChances(weights), pairChances(weights)];
    this.chances = single.slice();
    this.unknown = sumOf(weights.unknown);
    this.active = [
      ...Array.from(single, (chance, row): Active => ({
        a: row,
        b: row,
        weights: weights.rows.subarray(row * draws, (row + 1) * draws),
        chance,
      })),
      ...pairs.map(([a, b], k): Active => ({ a, b, weights: weights.ofPairs.subarray(k * draws, (k + 1) * draws), chance: paired[k]! })),
    ].filter(({ chance }) => chance > LEAST);
    this.mass = this.active.reduce((sum, { chance }) => sum + chance, 0);
    pairs.forEach(([a, b], k) => {
      this.chances[a]! += paired[k]! / 2;
      this.chances[b]! += paired[k]! / 2;
    });
  }

  /** Bits that the reading tells about the set of faults. */
  bits(p: number): number {
    const kinds = this.kinds(p);
    const { total, own } = this;
    total.fill(0);
    let conditional = 0;
    const slip = LEAK / kinds;
    const quiet = slip * Math.log2(slip);
    const sure = -(1 - LEAK + slip) * Math.log2(1 - LEAK + slip) - (kinds - 1) * quiet;
    for (const entry of this.active) {
      const { chance } = entry;
      const same = this.share(entry, p, kinds);
      if (same !== MIXED) {
        total[same]! += chance;
        conditional += chance * sure;
        continue;
      }
      for (let k = 0; k < kinds; k++) {
        const mine = own[k]!;
        total[k]! += mine;
        const share = mine === 0 ? 0 : ((1 - LEAK) * mine) / chance + slip;
        conditional -= chance * (mine === 0 ? quiet : share * Math.log2(share));
      }
    }
    let entropy = 0;
    for (let k = 0; k < kinds; k++) {
      const share = ((1 - LEAK) * total[k]!) / this.mass + slip;
      entropy -= share * Math.log2(share);
    }
    return Math.max(0, this.mass * entropy - conditional);
  }

  /** Each outcome with its chance, the chances by row after it (used again for the next one), and the readings that belong to it. */
  each(p: number, visit: (chance: number, after: Float64Array, range: readonly [number, number]) => void): void {
    const kinds = this.kinds(p);
    const table = new Float64Array(this.active.length * kinds);
    this.active.forEach((entry, i) => {
      const same = this.share(entry, p, kinds);
      if (same === MIXED) table.set(this.own.subarray(0, kinds), i * kinds);
      else table[i * kinds + same] = entry.chance;
    });
    const after = new Float64Array(this.chances.length);
    for (let k = 0; k < kinds; k++) {
      after.fill(0);
      let chance = this.unknown * this.unknownShare(p, k, kinds);
      this.active.forEach(({ a, b, chance: whole }, i) => {
        const share = (1 - LEAK) * table[i * kinds + k]! + (LEAK * whole) / kinds;
        chance += share;
        after[a]! += share / 2;
        after[b]! += share / 2;
      });
      const outcome = chance / (this.mass + this.unknown);
      if (outcome < LEAST_OUTCOME) continue;
      for (let row = 0; row < after.length; row++) after[row]! /= chance;
      visit(outcome, after, this.range(p, k));
    }
  }

  private range(p: number, k: number): readonly [number, number] {
    const edges = this.bands.edges[p]!;
    if (k > edges.length) return [Infinity, Infinity];
    const { mode } = this.kernels.dictionary.points[p]!;
    const bottom = mode === 'volts' || mode === 'diode' ? -Infinity : 0;
    return [k === 0 ? bottom : inverse(mode, edges[k - 1]!), k === edges.length ? Infinity : inverse(mode, edges[k]!)];
  }

  private unknownShare(p: number, k: number, kinds: number): number {
    const { kernels, bands } = this;
    const { draws } = kernels.dictionary;
    let healthy = 0;
    for (let d = 0; d < draws; d++) if (bands.band[p * kernels.rows * draws + d] === k) healthy++;
    return ((1 - UNKNOWN_MOVED) * healthy) / draws + UNKNOWN_MOVED / kinds;
  }

  private kinds(p: number): number {
    return this.bands.count[p]! + 1;
  }

  /** The one band of an entry, or `MIXED` with its weight by band, slips apart, in `own`. A pair reads as whichever fault moves the point further. */
  private share({ a, b, weights }: Active, p: number, kinds: number): number {
    const { rows, far, dictionary } = this.kernels;
    const { draws } = dictionary;
    const cell = p * rows + (far[p * rows + a]! >= far[p * rows + b]! ? a : b);
    const same = this.bands.same[cell]!;
    if (same !== MIXED) return same;
    this.own.fill(0);
    for (let d = 0; d < draws; d++) {
      const k = this.bands.band[cell * draws + d]!;
      if (k !== UNSEEN) this.own[k]! += weights[d]!;
      else for (let any = 0; any < kinds; any++) this.own[any]! += weights[d]! / kinds;
    }
    return MIXED;
  }
}
