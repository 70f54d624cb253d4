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

/** An outcome with its chance, the chances by row after it (used again for the next outcome), and the readings that belong to it. */
export type OutcomeVisit = (chance: number, after: Float64Array, range: readonly [number, number]) => void;

/** How a belief is shared among the outcomes of reading one point. */
export class OutcomeShares {
  /** By row, with pairs halved between their two; what they lack of 1 is unknown. */
  readonly chances: Float64Array;
  private readonly active: readonly Active[];
  private readonly mass: number;
  private readonly unknown: number;
  /** By row, the place of the entry of that row alone, or −1. Rows alone come before pairs. */
  private readonly alone: Int32Array;
  private readonly load: Float64Array;
  /** By row, with pairs halved, what of `chances` is looked into. */
  private readonly looked: Float64Array;
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
    this.alone = new Int32Array(single.length).fill(-1);
    this.active.forEach(({ a, b }, i) => a === b && (this.alone[a] = i));
    this.looked = new Float64Array(single.length);
    for (const { a, b, chance } of this.active) {
      this.looked[a]! += chance / 2;
      this.looked[b]! += chance / 2;
    }
    this.load = new Float64Array(this.active.length);
    this.mass = this.active.reduce((sum, { chance }) => sum + chance, 0);
    pairs.forEach(([a, b], k) => {
      this.chances[a]! += paired[k]! / 2;
      this.chances[b]! += paired[k]! / 2;
    });
  }

  /** Bits that the reading tells about the set of faults. */
  bits(p: number): number {
    const kinds = this.kinds(p);
    const { total, own, load } = this;
    total.fill(0);
    let conditional = 0;
    const slip = LEAK / kinds;
    const quiet = slip * Math.log2(slip);
    const sure = -(1 - LEAK + slip) * Math.log2(1 - LEAK + slip) - (kinds - 1) * quiet;
    this.gather(p);
    for (let i = 0; i < this.active.length; i++) {
      const chance = load[i]!;
      if (chance === 0) continue;
      const entry = this.active[i]!;
      const same = this.share(entry, p, kinds);
      if (same !== MIXED) {
        total[same]! += chance;
        conditional += chance * sure;
        continue;
      }
      for (let k = 0; k < kinds; k++) {
        const mine = own[k]! / entry.chance;
        total[k]! += chance * mine;
        const share = mine === 0 ? 0 : (1 - LEAK) * mine + slip;
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

  /** Chance by entry, where a pair that reads as one of its rows goes with that row if it is there alone: hundreds of pairs share a likely fault. */
  private gather(p: number): void {
    const { active, load, alone } = this;
    for (let i = 0; i < active.length; i++) {
      const { a, b, chance } = active[i]!;
      const twin = a === b ? i : alone[this.further(p, a, b)]!;
      if (twin < 0 || twin === i) load[i] = chance;
      else {
        load[i] = 0;
        load[twin]! += chance;
      }
    }
  }

  /** Of two rows the one that moves a point further: what a pair is taken to read. */
  private further(p: number, a: number, b: number): number {
    const { rows, far } = this.kernels;
    return far[p * rows + a]! >= far[p * rows + b]! ? a : b;
  }

  /** Shows each outcome that is likely enough to look into. */
  each(p: number, visit: OutcomeVisit): void {
    const kinds = this.kinds(p);
    const table = new Float64Array(this.active.length * kinds);
    this.active.forEach((entry, i) => {
      const same = this.share(entry, p, kinds);
      if (same === MIXED) table.set(this.own.subarray(0, kinds), i * kinds);
      else table[i * kinds + same] = entry.chance;
    });
    const after = new Float64Array(this.chances.length);
    const slip = LEAK / kinds;
    for (let k = 0; k < kinds; k++) {
      let chance = this.unknown * this.unknownShare(p, k, kinds) + slip * this.mass;
      for (let i = k; i < table.length; i += kinds) chance += (1 - LEAK) * table[i]!;
      const outcome = chance / (this.mass + this.unknown);
      if (outcome < LEAST_OUTCOME) continue;
      for (let row = 0; row < after.length; row++) after[row] = (slip / chance) * this.looked[row]!;
      for (let i = 0; i < this.active.length; i++) {
        const share = (((1 - LEAK) / chance) * table[i * kinds + k]!) / 2;
        if (share === 0) continue;
        const { a, b } = this.active[i]!;
        after[a]! += share;
        after[b]! += share;
      }
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

  /** The one band of an entry, or `MIXED` with its weight by band, slips apart, in `own`. */
  private share({ a, b, weights }: Active, p: number, kinds: number): number {
    const { rows, dictionary } = this.kernels;
    const { draws } = dictionary;
    const cell = p * rows + (a === b ? a : this.further(p, a, b));
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
