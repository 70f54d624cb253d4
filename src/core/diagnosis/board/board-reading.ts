import { pointOf } from '../metering.ts';
import { METER_SCALES } from '../meter-scale.ts';
import type { DeviceModel, Shift, TestPoint } from '../model.ts';
import { readingLaw } from '../reading-law.ts';
import type { Baseline } from '../readings/index.ts';
import { LEAK, likelihoodOf, type Likelihood } from '../readings/likelihood.ts';
import { farOf } from '../readings/grow-pairs.ts';
import { heldByCircuit, type BoardSense } from './board-sense.ts';
import { recentred } from './recentre.ts';

/** A reading weighed for every single fault, of the circuit and beyond it, on every draw. */
export interface BoardReading {
  readonly id: string;
  /** Index in the dictionary. */
  readonly point: number;
  /** Rows are none and each fault of the model; `value` is the reading as the circuit would have it. */
  readonly likelihood: Likelihood;
  /** By row, how far it moves the point. */
  readonly far: Float32Array;
  /** The same for boards that have a fault already, by its place in the model. */
  readonly withFault: ReadonlyMap<number, Likelihood>;
  /** How well it fits, by row and draw: 1 near what is expected, falling to 0. */
  readonly fits: Float64Array;
}

/** Departure that stands for a fault beyond the circuit which is said to move a point. */
const SAID_TO_MOVE = 1e3;
/** Further off than so many spreads a reading fits less and less. */
const FITS_WITHIN = 2;

/** Weighs a reading of a point of the circuit. */
export function boardReading(model: DeviceModel, sense: BoardSense, id: string, point: number, seen: number | null): BoardReading {
  const value = recentred(sense, point, seen);
  const own = weighOn(sense.baseline, id, point, value);
  const draws = own.unknown.length;
  const held = heldByCircuit(sense);
  const rows = new Float64Array((1 + model.faults.length) * draws);
  rows.set(own.rows);
  const far = new Float32Array(1 + model.faults.length);
  far.set(farOf(sense.baseline.kernels, point));
  const { id: name } = sense.baseline.kernels.dictionary.points[point]!;
  for (let fault = held; fault < model.faults.length; fault++) {
    const shift = model.faults[fault]!.shifts[name];
    rows.set(shift === undefined ? own.rows.subarray(0, draws) : shifted(model, name, shift, seen, draws), (1 + fault) * draws);
    if (shift !== undefined) far[1 + fault] = SAID_TO_MOVE;
  }
  const withFault = new Map([...sense.withFault].map(([fault, baseline]) => [fault, weighOn(baseline, id, point, value)]));
  const likelihood = { ...own, rows };
  return { id, point, likelihood, far, withFault, fits: fitsOf(sense.baseline, likelihood) };
}

const weighOn = (baseline: Baseline, id: string, point: number, value: number | null): Likelihood =>
  likelihoodOf(baseline, { id, kind: 'reading', point: baseline.kernels.dictionary.points[point]!.id, value });

/** A fault of which only is said where it moves a point to. */
function shifted(model: DeviceModel, name: string, shift: Shift, seen: number | null, draws: number): Float64Array {
  const law = readingLaw(pointOf(model, name));
  return new Float64Array(draws).fill((1 - LEAK) * law.density(shift, seen) + LEAK * law.density('slip', seen));
}

/** Each row's likelihood against the best that any could have there, by which what fits one fault as well as can be is 1. */
function fitsOf({ kernels }: Baseline, { rows, slip, point, value }: Likelihood): Float64Array {
  const peak = (1 - LEAK) * peakDensity(kernels, point!, value ?? null) + slip;
  const enough = peak * Math.exp(-0.5 * FITS_WITHIN ** 2);
  return rows.map((own) => Math.min(1, own / enough));
}

/** The density in the middle of the healthy board's own spread with the meter's; of OL its chance. */
function peakDensity(kernels: Baseline['kernels'], point: number, value: number | null): number {
  if (value === null) return 1;
  const { mode } = kernels.dictionary.points[point]!;
  const { slope, floor } = METER_SCALES[mode as TestPoint['mode']];
  const spread = Math.hypot(kernels.width[point * kernels.rows]!, (slope(value) * kernels.limit(mode, value)) / Math.sqrt(3), floor);
  return 1 / (Math.sqrt(2 * Math.PI) * spread);
}
