import type { Weighed } from './believe-readings.ts';
import type { Pair } from './pair-kernels.ts';
import { rowChances, type ReadingWeights } from './reading-belief.ts';
import { METER_SCALES } from '../meter-scale.ts';
import { STRAY_OL, type Kernels } from './kernels.ts';
import { KernelDensity, LEAK, outcomeChance, slipDensity, type Likelihood } from './likelihood.ts';
import { standing } from './standing.ts';

/** First faults from which pairs are grown. */
const FIRST = 12;
/** Draws by which a pair is judged before it is simulated. */
const SCREEN_DRAWS = 4;
/** Evidence is explained by a row under which it is so many times likelier than as a slip. */
const EXPLAINED = 3;
/** Departure, in spreads, from which on a row moves a point. */
const MOVED = 3;
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
  const order = [...chances.keys()].filter((row) => screen.explainsPart(row)).sort((a, b) => chances[b]! - chances[a]!);
  const firsts = order.slice(0, FIRST);
  if (firsts.length === 0) return [];
  const single = Float64Array.from(odds, (_, row) => screen.explains(row, row));
  const best = single.reduce((most, own, row) => Math.max(most, own * odds[row]!), 0);
  const least = LEAST_SHARE * best;
  const found = new Map<number, { pair: Pair; weight: number }>();
  for (const a of firsts) {
    const open = screen.unexplainedBy(a);
    if (open.length === 0) continue;
    for (let b = 1; b < odds.length; b++) {
      if (a === b || !helps(open, a, b)) continue;
      const both = screen.explains(a, b);
      const weight = both * odds[a]! * odds[b]!;
      if (weight < least || both < MORE * Math.max(single[a]!, single[b]!)) continue;
      const pair: Pair = a < b ? [a, b] : [b, a];
      found.set(pair[0] * odds.length + pair[1], { pair, weight });
    }
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
  /** Likelihood, on the same terms, of the two rows' departures together: what counts where both move the point. */
  readonly added?: (a: number, b: number, d: number) => number;
  /** Of a function: chance to work by row and screened draw, and likelihood by that chance. */
  readonly works?: Float64Array;
  readonly of?: (works: number) => number;
}

/** Whether b explains something of what a leaves open, or may make up for what a does there. */
function helps(open: readonly Column[], a: number, b: number): boolean {
  for (const { explained, far } of open) if (explained[b] === 1 || (far[a]! > MOVED && far[b]! > MOVED)) return true;
  return false;
}

/** Weighs pairs of rows by what each does apart. */
class Screen {
  private readonly columns: readonly Column[];
  private readonly at: readonly number[];

  constructor(weighed: readonly Weighed[], draws: number, count: number) {
    const every = Math.max(1, Math.floor(draws / SCREEN_DRAWS));
    this.at = Array.from({ length: Math.ceil(draws / every) }, (_, i) => i * every);
    const screened = (values: Float64Array | Float32Array, top = 1): Float64Array => screenedDraws(values, draws, this.at, top);
    this.columns = weighed.flatMap(({ baseline, likelihoods, evidence }) => {
      const stands = standing(evidence);
      return likelihoods.map((likelihood, e): Column => {
        const top = largest(likelihood.rows);
        const rows = screened(likelihood.rows, top);
        const column = { rows, explained: explainedBy(rows, count, likelihood.slip / top) };
        const each = stands[e]!;
        const from = likelihood.point! * count;
        if (each.kind === 'reading') {
          const density = together(baseline.kernels, likelihood);
          return { ...column, far: baseline.kernels.far.subarray(from, from + count), added: (a, b, d) => density(a, b, d) / top };
        }
        const honesty = each.honesty ?? 1;
        const of = (works: number): number => (honesty * outcomeChance(each.outcome, works) + (1 - honesty) / 3) / top;
        return { ...column, far: new Float32Array(count), works: screened(baseline.functions.get(each.function)!), of };
      });
    });
  }

  /** Whether a row explains something that the healthy board does not. */
  explainsPart(row: number): boolean {
    return this.columns.some(({ explained }) => explained[0] === 0 && explained[row] === 1);
  }

  unexplainedBy(row: number): readonly Column[] {
    return this.columns.filter(({ explained }) => explained[row] === 0);
  }

  /** Likelihood of all evidence under both, to within a factor. */
  explains(a: number, b: number): number {
    const draws = this.at.length;
    let sum = 0;
    for (let d = 0; d < draws; d++) {
      let product = 1;
      for (const { rows, far, added, works, of } of this.columns) {
        if (works) product *= of!(a === b ? works[a * draws + d]! : works[a * draws + d]! * works[b * draws + d]!);
        else {
          const apart = rows[(far[a]! >= far[b]! ? a : b) * draws + d]!;
          product *= a !== b && far[a]! > MOVED && far[b]! > MOVED ? Math.max(apart, added!(a, b, this.at[d]!)) : apart;
        }
      }
      sum += product;
    }
    return sum;
  }
}

/** Likelihood of a reading when the departures of two rows from the healthy one add up: exact for voltages of a linear circuit. */
function together(kernels: Kernels, { point: p, value }: Likelihood): (a: number, b: number, d: number) => number {
  const { dictionary, rows, width } = kernels;
  const { points, draws, values } = dictionary;
  const density = new KernelDensity(kernels, p!, value!);
  const slip = slipDensity(kernels, p!, value!);
  const at = (row: number, d: number): number => values[(row * draws + d) * points.length + p!]!;
  return (a, b, d) => {
    const sum = at(a, d) + at(b, d) - at(0, d);
    if (!Number.isFinite(sum)) return LEAK * slip;
    const spread = Math.max(width[p! * rows + a]!, width[p! * rows + b]!);
    return (1 - LEAK) * density.at(METER_SCALES[points[p!]!.mode].of(sum), spread, STRAY_OL) + LEAK * slip;
  };
}

function largest(values: Float64Array): number {
  let most = 0;
  for (let i = 0; i < values.length; i++) if (values[i]! > most) most = values[i]!;
  return most;
}

/** Values by row and draw, only of the draws at these places, as a share of `top`. */
function screenedDraws(values: Float64Array | Float32Array, draws: number, at: readonly number[], top: number): Float64Array {
  const rows = values.length / draws;
  const result = new Float64Array(rows * at.length);
  for (let row = 0; row < rows; row++)
    for (let i = 0; i < at.length; i++) result[row * at.length + i] = values[row * draws + at[i]!]! / top;
  return result;
}

function explainedBy(rows: Float64Array, count: number, slip: number): Uint8Array {
  const draws = rows.length / count;
  const explained = new Uint8Array(count);
  for (let i = 0; i < rows.length; i++) if (rows[i]! > EXPLAINED * slip) explained[Math.floor(i / draws)] = 1;
  return explained;
}
