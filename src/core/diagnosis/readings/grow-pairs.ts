import type { Weighed } from './believe-readings.ts';
import type { Pair } from './pair-kernels.ts';
import { rowChances, type ReadingWeights } from './reading-belief.ts';
import { outcomeChance } from './likelihood.ts';
import { standing } from './standing.ts';

/** First faults from which pairs are grown. */
const FIRST = 16;
/** Draws by which a pair is judged before it is simulated. */
const SCREEN_DRAWS = 6;
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
  const found = new Map<number, { pair: Pair; weight: number }>();
  for (const a of firsts)
    for (let b = 1; b < odds.length; b++) {
      if (a === b) continue;
      const both = screen.explains(a, b);
      const weight = both * odds[a]! * odds[b]!;
      if (weight < LEAST_SHARE * best || both < MORE * Math.max(single[a]!, single[b]!)) continue;
      const pair: Pair = a < b ? [a, b] : [b, a];
      found.set(pair[0] * odds.length + pair[1], { pair, weight });
    }
  return [...found.values()]
    .sort((p, q) => q.weight - p.weight)
    .slice(0, limit)
    .map(({ pair }) => pair);
}

/** Weight of a pair of rows by what each does apart. */
class Screen {
  private readonly columns: readonly {
    rows: Float64Array;
    far: Float32Array;
    works?: Float32Array;
    of?: (works: number) => number;
    top: number;
  }[];
  private readonly every: number;

  constructor(
    weighed: readonly Weighed[],
    private readonly draws: number,
    count: number,
  ) {
    this.every = Math.max(1, Math.floor(draws / SCREEN_DRAWS));
    this.columns = weighed.flatMap(({ baseline, likelihoods, evidence }) => {
      const stands = standing(evidence);
      return likelihoods.map(({ rows, point }, e) => {
        const top = rows.reduce((most, value) => Math.max(most, value), 0);
        const each = stands[e]!;
        if (each.kind === 'reading')
          return { rows, far: baseline.kernels.far.subarray(point! * count, (point! + 1) * count), top };
        const honesty = each.honesty ?? 1;
        const of = (works: number): number => honesty * outcomeChance(each.outcome, works) + (1 - honesty) / 3;
        return { rows, far: new Float32Array(count), works: baseline.functions.get(each.function)!, of, top };
      });
    });
  }

  /** Likelihood of all evidence under both, to within a factor. */
  explains(a: number, b: number): number {
    const { draws, every, columns } = this;
    let sum = 0;
    for (let d = 0; d < draws; d += every) {
      let product = 1;
      for (const { rows, far, works, of, top } of columns) {
        const own = works
          ? of!(a === b ? works[a * draws + d]! : works[a * draws + d]! * works[b * draws + d]!)
          : rows[(far[a]! >= far[b]! ? a : b) * draws + d]!;
        product *= own / top;
      }
      sum += product;
    }
    return sum;
  }
}
