import type { Weighed } from './believe-readings.ts';
import type { Pair } from './pair-kernels.ts';
import { rowChances, type ReadingWeights } from './reading-belief.ts';
import { outcomeChance } from './likelihood.ts';
import { standing } from './standing.ts';

/** First faults from which pairs are grown. */
const FIRST = 12;
/** Draws by which a pair is judged before it is simulated. */
const SCREEN_DRAWS = 4;
/** Evidence is explained by a row under which it is so many times likelier than as a slip. */
const EXPLAINED = 3;
/** A pair that, judged so, weighs less than this share of the likeliest single fault is not looked into. */
const LEAST_SHARE = 1e-3;
/** A pair explains the evidence so many times better than either of its faults, or it is not thought of. */
const MORE = 4;

/**
 * Pairs of rows worth weighing, best first: each of the likeliest single faults with each other fault, judged by what the two do apart. A reading is taken as
 * of the fault that moves its point further. Rows need not explain everything to be likely here, because any reading may be a slip.
 */
export function growPairs(weighed: readonly Weighed[], alone: ReadingWeights, limit: number, odds: Float64Array): Pair[] {
  const screen = new Screen(weighed, alone.draws, odds.length);
  const chances = rowChances(alone);
  const order = [...chances.keys()].slice(1).sort((a, b) => chances[b]! - chances[a]!);
  const firsts = order.slice(0, FIRST);
  const single = Float64Array.from(odds, (_, row) => screen.explains(row, row));
  const best = single.reduce((most, own, row) => Math.max(most, own * odds[row]!), 0);
  const least = LEAST_SHARE * best;
  const found = new Map<number, { pair: Pair; weight: number }>();
  for (const a of firsts)
    for (let b = 1; b < odds.length; b++) {
      if (a === b || !screen.helps(a, b)) continue;
      const both = screen.explains(a, b);
      const weight = both * odds[a]! * odds[b]!;
      if (weight < least || both < MORE * Math.max(single[a]!, single[b]!)) continue;
      const pair: Pair = a < b ? [a, b] : [b, a];
      found.set(pair[0] * odds.length + pair[1], { pair, weight });
    }
  return [...found.values()]
    .sort((p, q) => q.weight - p.weight)
    .slice(0, limit)
    .map(({ pair }) => pair);
}

/** One piece of evidence, laid out for going over many pairs. */
interface Column {
  /** By row and screened draw, as a share of the largest. */
  readonly rows: Float64Array;
  /** By row, whether it explains this more than a slip does. */
  readonly explained: Uint8Array;
  /** By row, which of two moves the point; all zero for a function. */
  readonly far: Float32Array;
  /** Of a function: chance to work by row and screened draw, and likelihood by that chance. */
  readonly works?: Float64Array;
  readonly of?: (works: number) => number;
}

/** Weighs pairs of rows by what each does apart. */
class Screen {
  private readonly columns: readonly Column[];
  private readonly at: readonly number[];

  constructor(weighed: readonly Weighed[], draws: number, count: number) {
    const every = Math.max(1, Math.floor(draws / SCREEN_DRAWS));
    this.at = Array.from({ length: Math.ceil(draws / every) }, (_, i) => i * every);
    const screened = (values: ArrayLike<number>): Float64Array =>
      Float64Array.from(
        { length: count * this.at.length },
        (_, i) => values[Math.floor(i / this.at.length) * draws + this.at[i % this.at.length]!]!,
      );
    this.columns = weighed.flatMap(({ baseline, likelihoods, evidence }) => {
      const stands = standing(evidence);
      return likelihoods.map((likelihood, e) => {
        const top = likelihood.rows.reduce((most, value) => Math.max(most, value), 0);
        const raw = screened(likelihood.rows);
        const column = { rows: raw.map((value) => value / top), explained: explainedBy(raw, count, likelihood.slip) };
        const each = stands[e]!;
        const from = likelihood.point! * count;
        if (each.kind === 'reading') return { ...column, far: baseline.kernels.far.subarray(from, from + count) };
        const honesty = each.honesty ?? 1;
        const of = (works: number): number => (honesty * outcomeChance(each.outcome, works) + (1 - honesty) / 3) / top;
        return { ...column, far: new Float32Array(count), works: screened(baseline.functions.get(each.function)!), of };
      });
    });
  }

  /** Whether b explains something that a does not. */
  helps(a: number, b: number): boolean {
    return this.columns.some(({ explained }) => explained[a] === 0 && explained[b] === 1);
  }

  /** Likelihood of all evidence under both, to within a factor. */
  explains(a: number, b: number): number {
    const draws = this.at.length;
    let sum = 0;
    for (let d = 0; d < draws; d++) {
      let product = 1;
      for (const { rows, far, works, of } of this.columns) {
        if (works) product *= of!(a === b ? works[a * draws + d]! : works[a * draws + d]! * works[b * draws + d]!);
        else product *= rows[(far[a]! >= far[b]! ? a : b) * draws + d]!;
      }
      sum += product;
    }
    return sum;
  }
}

function explainedBy(rows: Float64Array, count: number, slip: number): Uint8Array {
  const draws = rows.length / count;
  return Uint8Array.from({ length: count }, (_, row) => {
    for (let d = 0; d < draws; d++) if (rows[row * draws + d]! > EXPLAINED * slip) return 1;
    return 0;
  });
}
