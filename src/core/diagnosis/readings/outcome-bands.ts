import { METER_SCALES } from '../meter-scale.ts';
import type { Kernels } from './kernels.ts';

/** What readings of a point can be told apart, from the values of the dictionary itself. */
export interface OutcomeBands {
  /** By point, rising lower edges on the meter's scale; band 0 begins below all. */
  readonly edges: readonly Float64Array[];
  /** Bands of numbers of each point; OL is the band after them. */
  readonly count: Uint8Array;
  /** Band of each value, point by point, row by row, draw by draw; `UNSEEN` where nothing is known. */
  readonly band: Uint8Array;
  /** By point and row: the band when it is the same in every draw, else `MIXED`. */
  readonly same: Uint8Array;
}

export const UNSEEN = 255;
export const MIXED = 254;
export const MOST_BANDS = 14;
/** A gap so many spreads wide parts two bands, and a band may be so many wide. */
const GAP = 2.5;
const WIDEST = 9;

/** Bands for the rows that are known now; make them anew when more of the dictionary is filled. */
export function outcomeBands(kernels: Kernels): OutcomeBands {
  const { dictionary, rows } = kernels;
  const { points, draws, values } = dictionary;
  const edges = points.map((_, p) => edgesOf(kernels, p));
  const count = Uint8Array.from(edges, (each) => each.length + 1);
  const band = Uint8Array.from({ length: values.length }, (_, i) => {
    const p = Math.floor(i / (rows * draws));
    const value = values[(i % (rows * draws)) * points.length + p]!;
    if (value === Infinity) return count[p]!;
    return Number.isNaN(value) ? UNSEEN : bandOf(edges[p]!, METER_SCALES[points[p]!.mode].of(value));
  });
  const same = Uint8Array.from({ length: rows * points.length }, (_, cell) => {
    const own = band.subarray(cell * draws, (cell + 1) * draws);
    return own[0] !== UNSEEN && own.every((each) => each === own[0]) ? own[0]! : MIXED;
  });
  return { edges, count, band, same };
}

/** Number of edges at or below a value. */
export function bandOf(edges: Float64Array, x: number): number {
  let band = 0;
  while (band < edges.length && edges[band]! <= x) band++;
  return band;
}

/** Edges in the middle of wide gaps between the rows' middles; where there are too many, the narrowest gaps go. */
function edgesOf({ dictionary, rows, centre, width, limit }: Kernels, p: number): Float64Array {
  const { points, draws } = dictionary;
  const { mode } = points[p]!;
  const scale = METER_SCALES[mode];
  const middles: number[] = [];
  for (let row = 0; row < rows; row++) {
    let [sum, numbers] = [0, 0];
    for (let d = 0; d < draws; d++) {
      const x = centre[(p * rows + row) * draws + d]!;
      if (!Number.isNaN(x)) [sum, numbers] = [sum + x, numbers + 1];
    }
    if (numbers > 0) middles.push(sum / numbers);
  }
  middles.sort((a, b) => a - b);
  const board = 1.7 * width[p * rows]!;
  const spreadAt = (x: number): number => {
    const value = inverse(mode, x);
    return Math.hypot(board, (limit(mode, value) * scale.slope(value)) / Math.sqrt(3), scale.floor);
  };
  const cuts: { at: number; gap: number }[] = [];
  let start = middles[0] ?? 0;
  for (let i = 1; i < middles.length; i++) {
    const [before, x] = [middles[i - 1]!, middles[i]!];
    const spread = spreadAt(x);
    if (x - before < GAP * spread && x - start < WIDEST * spread) continue;
    cuts.push({ at: (before + x) / 2, gap: (x - before) / spread });
    start = x;
  }
  const kept = cuts.sort((a, b) => b.gap - a.gap).slice(0, MOST_BANDS - 1);
  return Float64Array.from(kept.map(({ at }) => at)).sort();
}

/** The value at a place on the meter's scale. */
export function inverse(mode: keyof typeof METER_SCALES, x: number): number {
  if (mode === 'volts') return 0.05 * Math.sinh(x);
  if (mode === 'diode') return x;
  return Math.max(Math.exp(x) - (mode === 'ohms' ? 0.1 : 1e-5), 0);
}
