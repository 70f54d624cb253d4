import type { Weighed } from './believe-readings.ts';
import type { Pair } from './pair-kernels.ts';
import { rowChances, type ReadingWeights } from './reading-belief.ts';
import { METER_SCALES } from '../meter-scale.ts';
import { STRAY_OL, type Kernels } from './kernels.ts';
import { KernelDensity, LEAK, slipDensity, trialLaw, type Likelihood } from './likelihood.ts';
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
  const at = screenedAt(alone.draws);
  const columns = weighed.flatMap(({ baseline, likelihoods, evidence }) => {
    const stands = standing(evidence);
    return likelihoods.map((likelihood, e) => {
      const each = stands[e]!;
      return each.kind === 'reading'
        ? readingColumn(baseline.kernels, likelihood, farOf(baseline.kernels, likelihood.point!), at)
        : functionColumn(likelihood, each, baseline.functions.get(each.function)!, odds.length, at);
    });
  });
  return growPairsFrom(columns, rowChances(alone), limit, odds);
}

/** The same from evidence that is laid out already: `chances` and `odds` by row, of which row 0 is the healthy one. */
export function growPairsFrom(columns: readonly Column[], chances: Float64Array, limit: number, odds: Float64Array): Pair[] {
  const screen = new Screen(columns, odds.length);
  const order = [...odds.keys()].filter((row) => screen.explainsPart(row)).sort((a, b) => chances[b]! - chances[a]!);
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
export interface Column {
  /** By row and screened draw, as a share of the largest. */
  readonly rows: Float64Array;
  /** By row, whether it explains this more than a slip does. */
  readonly explained: Uint8Array;
  /** By row, how far it moves the point; all zero of what is no reading. */
  readonly far: Float32Array;
  /** Likelihood, on the same terms, of two different rows together, at a place in `rows`' draws. */
  readonly both: (a: number, b: number, at: number) => number;
}

/** Draws by which pairs are judged before they are simulated. */
export function screenedAt(draws: number): readonly number[] {
  const every = Math.max(1, Math.floor(draws / SCREEN_DRAWS));
  return Array.from({ length: Math.ceil(draws / every) }, (_, i) => i * every);
}

/** By row, how far it moves a point. */
export const farOf = ({ far, rows }: Kernels, point: number): Float32Array => far.subarray(point * rows, (point + 1) * rows);

/** A reading: of whichever row moves the point further; where both do, or of their departures together. Rows beyond those of the circuit may be behind them. */
export function readingColumn(kernels: Kernels, likelihood: Likelihood, far: Float32Array, at: readonly number[]): Column {
  const top = largest(likelihood.rows);
  const rows = screenedDraws(likelihood.rows, likelihood.unknown.length, at, top);
  const added = together(kernels, likelihood);
  const both = (a: number, b: number, i: number): number => {
    const apart = rows[(far[a]! >= far[b]! ? a : b) * at.length + i]!;
    const adds = far[a]! > MOVED && far[b]! > MOVED && a < kernels.rows && b < kernels.rows;
    return adds ? Math.max(apart, added(a, b, at[i]!) / top) : apart;
  };
  return { rows, explained: explainedBy(rows, far.length, likelihood.slip / top), far, both };
}

function functionColumn(
  likelihood: Likelihood,
  evidence: Extract<Weighed['evidence'][number], { kind: 'function' }>,
  works: Float32Array,
  count: number,
  at: readonly number[],
): Column {
  const top = largest(likelihood.rows);
  const draws = likelihood.unknown.length;
  const rows = screenedDraws(likelihood.rows, draws, at, top);
  const chance = screenedDraws(works, draws, at, 1);
  const law = trialLaw(evidence);
  const both = (a: number, b: number, i: number): number => law.at(chance[a * at.length + i]! * chance[b * at.length + i]!) / top;
  return { rows, explained: explainedBy(rows, count, likelihood.slip / top), far: new Float32Array(count), both };
}

/** Evidence of which only the likelihood of each row is known: what makes it likelier wins, and what makes it less likely counts twice. */
export function plainColumn(byRow: Float64Array, at: readonly number[]): Column {
  const top = largest(byRow);
  const healthy = byRow[0]! / top;
  const rows = Float64Array.from({ length: byRow.length * at.length }, (_, i) => byRow[Math.floor(i / at.length)]! / top);
  const both = (a: number, b: number, i: number): number => {
    const [p, q] = [rows[a * at.length + i]!, rows[b * at.length + i]!];
    return p > healthy || q > healthy ? Math.max(p, q) : (p * q) / healthy;
  };
  const slip = byRow.reduce((least, each) => Math.min(least, each), Infinity) / top;
  return { rows, explained: explainedBy(rows, byRow.length, slip), far: new Float32Array(byRow.length), both };
}

/** Whether b explains something of what a leaves open, or may make up for what a does there. */
function helps(open: readonly Column[], a: number, b: number): boolean {
  for (const { explained, far } of open) if (explained[b] === 1 || (far[a]! > MOVED && far[b]! > MOVED)) return true;
  return false;
}

/** Weighs pairs of rows by what each does apart. */
class Screen {
  private readonly draws: number;

  constructor(
    private readonly columns: readonly Column[],
    count: number,
  ) {
    this.draws = (columns[0]?.rows.length ?? 0) / count;
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
    let sum = 0;
    for (let d = 0; d < this.draws; d++) {
      let product = 1;
      for (const { rows, both } of this.columns) product *= a === b ? rows[a * this.draws + d]! : both(a, b, d);
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
