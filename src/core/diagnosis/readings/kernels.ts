import { METER_SCALES } from '../meter-scale.ts';
import { checkShape, type MeterLimit, type ReadingDictionary } from './reading-dictionary.ts';

/**
 * Weight of the draws against the middle of their row, after M. West, "Approximating posterior distributions by mixtures", J. R. Statist. Soc. B 55
 * (1993), from memory: a kernel of `WIDTH` times the spread of the row around centres drawn in by √(1 − WIDTH²) keeps mean and variance.
 */
const WIDTH = 0.6;
const DRAWN_IN = Math.sqrt(1 - WIDTH ** 2);
/** Draws of the healthy board that count towards the spread of a row. */
const BORROWED = 4;
/** Share of OL of a draw that is taken from the whole row. */
const SHARED_OL = 0.2;
/** Chance that a meter shows OL where a number is expected, and the other way round. */
export const STRAY_OL = 0.002;

/**
 * A dictionary on the meter's scales, as smooth densities: one kernel a row, draw and point. Point by point, row by row, draw by draw, so that
 * what a reading needs lies together.
 */
export interface Kernels {
  readonly dictionary: ReadingDictionary;
  readonly rows: number;
  readonly limit: MeterLimit;
  /** NaN where nothing is known, or where the row reads OL in every draw. */
  readonly centre: Float32Array;
  /** Spread of the kernel without the meter, by point and row. */
  readonly width: Float32Array;
  /** By point and row: how far the row's middle is from the healthy one, in spreads of both; a change to or from OL is further than any number. */
  readonly far: Float32Array;
  /** Chance of OL. */
  readonly ol: Float32Array;
  /** By row: 1 once the row is simulated at some point. */
  readonly known: Uint8Array;
}

export function kernelsOf(dictionary: ReadingDictionary, limit: MeterLimit): Kernels {
  checkShape(dictionary);
  const rows = 1 + dictionary.faults.length;
  const cells = rows * dictionary.points.length;
  const kernels: Kernels = {
    dictionary,
    rows,
    limit,
    centre: new Float32Array(dictionary.values.length).fill(NaN),
    width: new Float32Array(cells),
    far: new Float32Array(cells),
    ol: new Float32Array(dictionary.values.length),
    known: new Uint8Array(rows),
  };
  for (let row = 0; row < rows; row++) fillRow(kernels, row);
  return kernels;
}

/** Takes over a row of the dictionary that has been filled since; one that is still empty costs next to nothing. The healthy row must be there first. */
export function fillRow(kernels: Kernels, row: number): void {
  const { points, draws, values } = kernels.dictionary;
  const own = values.subarray(row * draws * points.length, (row + 1) * draws * points.length);
  if (isEmpty(own)) return;
  const found = new Float64Array(draws);
  for (let p = 0; p < points.length; p++) {
    for (let d = 0; d < draws; d++) found[d] = own[d * points.length + p]!;
    fillCell(kernels, row, p, found);
  }
}

function isEmpty(values: Float64Array): boolean {
  for (let i = 0; i < values.length; i++) if (!Number.isNaN(values[i]!)) return false;
  return true;
}

/** `found` are the readings of the row at this point, by draw. */
function fillCell(kernels: Kernels, row: number, p: number, found: Float64Array): void {
  const { dictionary, rows, centre, width, far, ol, known } = kernels;
  const { points, draws } = dictionary;
  const scale = METER_SCALES[points[p]!.mode];
  const { mean, variance, numbers, dark } = summary(found, scale.of);
  if (numbers + dark === 0) return;
  known[row] = 1;
  const cell = p * rows + row;
  const healthy = row === 0 ? variance : (width[p * rows]! / WIDTH) ** 2;
  width[cell] = WIDTH * Math.sqrt((numbers * variance + BORROWED * healthy) / (numbers + BORROWED));
  const share = dark / (numbers + dark);
  found.forEach((value, d) => {
    const isNumber = value !== Infinity && !Number.isNaN(value);
    centre[cell * draws + d] = isNumber ? mean + DRAWN_IN * (scale.of(value) - mean) : mean;
    const isDark = value === Infinity ? 1 : isNumber ? 0 : share;
    ol[cell * draws + d] = STRAY_OL + (1 - 2 * STRAY_OL) * ((1 - SHARED_OL) * isDark + SHARED_OL * share);
  });
  far[cell] = departure(kernels, cell, p * rows, scale.floor);
}

function summary(found: Float64Array, of: (value: number) => number): { mean: number; variance: number; numbers: number; dark: number } {
  let [sum, squares, numbers, dark] = [0, 0, 0, 0];
  for (const value of found) {
    if (value === Infinity) dark++;
    else if (!Number.isNaN(value)) {
      const x = of(value);
      [sum, squares, numbers] = [sum + x, squares + x * x, numbers + 1];
    }
  }
  const mean = numbers > 0 ? sum / numbers : NaN;
  return { mean, variance: numbers > 1 ? Math.max(0, squares / numbers - mean * mean) : 0, numbers, dark };
}

const FAR = 1e6;

function departure({ dictionary, centre, width, ol }: Kernels, cell: number, healthy: number, floor: number): number {
  const { draws } = dictionary;
  let [off, dark] = [0, 0];
  for (let d = 0; d < draws; d++) {
    const [a, b] = [cell * draws + d, healthy * draws + d];
    dark += ol[a]! - ol[b]!;
    if (!Number.isNaN(centre[a]!) && !Number.isNaN(centre[b]!)) off += centre[a]! - centre[b]!;
  }
  return Math.abs(dark) > draws / 2 ? FAR : Math.abs(off) / draws / Math.hypot(width[cell]!, width[healthy]!, floor);
}

/** Standard uncertainty of the meter at a reading on the scale of its mode: limit / √3, an even distribution. */
export function meterSpread(kernels: Kernels, p: number, value: number): number {
  const { mode } = kernels.dictionary.points[p]!;
  return (METER_SCALES[mode].slope(value) * kernels.limit(mode, value)) / Math.sqrt(3);
}
