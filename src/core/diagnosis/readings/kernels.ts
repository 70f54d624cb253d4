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
const STRAY_OL = 0.01;

/** A dictionary on the meter's scales, as smooth densities: one kernel a row, draw and point, in the order of `values`. */
export interface Kernels {
  readonly dictionary: ReadingDictionary;
  readonly rows: number;
  readonly limit: MeterLimit;
  /** NaN where nothing is known, or where the row reads OL in every draw. */
  readonly centre: Float32Array;
  /** Spread of the kernel without the meter, by row and point. */
  readonly width: Float32Array;
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
    ol: new Float32Array(dictionary.values.length),
    known: new Uint8Array(rows),
  };
  for (let row = 0; row < rows; row++) fillRow(kernels, row);
  return kernels;
}

/** Takes over a row of the dictionary that has been filled since. The healthy row must be there first. */
export function fillRow(kernels: Kernels, row: number): void {
  const { points } = kernels.dictionary;
  for (let p = 0; p < points.length; p++) fillCell(kernels, row, p);
}

function fillCell(kernels: Kernels, row: number, p: number): void {
  const { dictionary, centre, width, ol, known } = kernels;
  const { points, draws, values } = dictionary;
  const scale = METER_SCALES[points[p]!.mode];
  const at = (d: number): number => (row * draws + d) * points.length + p;
  let [sum, squares, numbers, dark] = [0, 0, 0, 0];
  for (let d = 0; d < draws; d++) {
    const value = values[at(d)]!;
    if (value === Infinity) dark++;
    else if (!Number.isNaN(value)) {
      const x = scale.of(value);
      [sum, squares, numbers] = [sum + x, squares + x * x, numbers + 1];
    }
  }
  if (numbers + dark === 0) return;
  known[row] = 1;
  const mean = numbers > 0 ? sum / numbers : NaN;
  const own = numbers > 1 ? Math.max(0, squares / numbers - mean * mean) : 0;
  const healthy = row === 0 ? own : (kernels.width[p]! / WIDTH) ** 2;
  width[row * points.length + p] = WIDTH * Math.sqrt((numbers * own + BORROWED * healthy) / (numbers + BORROWED));
  for (let d = 0; d < draws; d++) {
    const value = values[at(d)]!;
    const x = value === Infinity || Number.isNaN(value) ? mean : scale.of(value);
    centre[at(d)] = mean + DRAWN_IN * (x - mean);
    const isDark = value === Infinity ? 1 : Number.isNaN(value) ? dark / (numbers + dark) : 0;
    const share = (1 - SHARED_OL) * isDark + (SHARED_OL * dark) / (numbers + dark);
    ol[at(d)] = STRAY_OL + (1 - 2 * STRAY_OL) * share;
  }
}

/** Standard uncertainty of the meter at a reading on the scale of its mode: limit / √3, an even distribution. */
export function meterSpread(kernels: Kernels, p: number, value: number): number {
  const { mode } = kernels.dictionary.points[p]!;
  return (METER_SCALES[mode].slope(value) * kernels.limit(mode, value)) / Math.sqrt(3);
}
