import type { Kernels } from './kernels.ts';
import { LEAK } from './likelihood.ts';
import { inverse, MOST_BANDS, UNSEEN, type OutcomeBands } from './outcome-bands.ts';
import { pairChances, rowChances, sumOf, type ReadingWeights } from './reading-belief.ts';

/** Rows that are less likely than this are taken together. */
const LEAST = 2e-4;
const BANDS = MOST_BANDS + 1;
/** An outcome less likely than this is not looked into. */
const LEAST_OUTCOME = 2e-3;
/** Share of readings that a trouble outside the model moves anywhere. */
const UNKNOWN_MOVED = 0.3;

/** How a belief is shared among the outcomes of reading one point. */
export class OutcomeShares {
  /** By row, with pairs halved between their two; what they lack of 1 is unknown. */
  readonly chances: Float64Array;
  private readonly active: readonly { readonly a: number; readonly b: number; readonly weights: Float64Array; readonly chance: number }[];
  private readonly unknown: number;
  /** By active entry and band, for the point that was filled last. */
  private readonly table: Float64Array;
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
    const rows = [...single.keys()].filter((row) => single[row]! > LEAST);
    this.active = [
      ...rows.map((row) => ({ a: row, b: row, weights: weights.rows.subarray(row * draws, (row + 1) * draws), chance: single[row]! })),
      ...pairs.flatMap(([a, b], k) =>
        paired[k]! > LEAST ? [{ a, b, weights: weights.ofPairs.subarray(k * draws, (k + 1) * draws), chance: paired[k]! }] : [],
      ),
    ];
    pairs.forEach(([a, b], k) => {
      this.chances[a]! += paired[k]! / 2;
      this.chances[b]! += paired[k]! / 2;
    });
    this.table = new Float64Array(this.active.length * BANDS);
  }

  /** Bits that the reading tells about the set of faults. */
  bits(p: number): number {
    const kinds = this.fill(p);
    let conditional = 0;
    this.active.forEach(({ chance }, i) => {
      for (let k = 0; k < kinds; k++) {
        const share = this.table[i * BANDS + k]!;
        if (share > 0) conditional -= share * Math.log2(share / chance);
      }
    });
    const all = sumOf(this.total, 0, kinds);
    let entropy = 0;
    for (let k = 0; k < kinds; k++) if (this.total[k]! > 0) entropy -= this.total[k]! * Math.log2(this.total[k]! / all);
    return Math.max(0, entropy - conditional);
  }

  /** Each outcome with its chance, the chances by row after it, and the readings that belong to it. */
  each(p: number, visit: (chance: number, after: Float64Array, range: readonly [number, number]) => void): void {
    const kinds = this.fill(p);
    const all = sumOf(this.total, 0, kinds) + this.unknown;
    for (let k = 0; k < kinds; k++) {
      const unknown = this.unknown * this.unknownShare(p, k, kinds);
      const chance = this.total[k]! + unknown;
      if (chance / all < LEAST_OUTCOME) continue;
      const after = new Float64Array(this.chances.length);
      this.active.forEach(({ a, b }, i) => {
        const share = this.table[i * BANDS + k]! / chance;
        after[a]! += share / 2;
        after[b]! += share / 2;
      });
      visit(chance / all, after, this.range(p, k));
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
    const { draws, points } = this.kernels.dictionary;
    let healthy = 0;
    for (let d = 0; d < draws; d++) if (this.bands.band[d * points.length + p] === k) healthy++;
    return ((1 - UNKNOWN_MOVED) * healthy) / draws + UNKNOWN_MOVED / kinds;
  }

  private fill(p: number): number {
    const { draws, points } = this.kernels.dictionary;
    const { band, count, far } = this.bands;
    const n = points.length;
    const kinds = count[p]! + 1;
    this.table.fill(0);
    this.total.fill(0);
    for (let i = 0; i < this.active.length; i++) {
      const { a, b, weights, chance } = this.active[i]!;
      const row = a === b || far[a * n + p]! >= far[b * n + p]! ? a : b;
      const at = i * BANDS;
      const slip = (LEAK * chance) / kinds;
      for (let k = 0; k < kinds; k++) this.table[at + k] = slip;
      for (let d = 0, from = row * draws * n + p; d < draws; d++, from += n) {
        const k = band[from]!;
        const weight = (1 - LEAK) * weights[d]!;
        if (k !== UNSEEN) this.table[at + k]! += weight;
        else for (let any = 0; any < kinds; any++) this.table[at + any]! += weight / kinds;
      }
      for (let k = 0; k < kinds; k++) this.total[k]! += this.table[at + k]!;
    }
    return kinds;
  }
}
