import type { Stage, TestPoint } from '../model.ts';
import { DiagnosisError } from '../posterior-over-sets.ts';

/** A fault of the circuit, as far as belief needs it. */
export interface ReadingFault {
  readonly id: string;
  readonly block: string;
  /** Component that it is about, for "which part". */
  readonly part: string;
  /** Chance that a unit sold as faulty has it, 0..1. */
  readonly rate: number;
  /** Of a fault that is a resistance between two nodes, which differs from board to board: the nodes, the logarithm of its typical size and the spread of that. */
  readonly path?: { readonly between: string; readonly logOhm: number; readonly spread: number };
}

/** Where and how one can measure. */
export interface ReadingPoint {
  readonly id: string;
  readonly mode: TestPoint['mode'];
  /** To put the leads there and read, once one is at it. */
  readonly minutes: number;
  readonly side: 'front' | 'back' | 'both';
  readonly stage: Stage;
  /** Name of the power state. */
  readonly power: string;
}

/**
 * Expected readings of a circuit: row 0 is the healthy board, row 1 + i the board with fault i. `values` runs row by row, draw by draw, point by point,
 * in V, Ω, V of drop, A; Infinity is OL, NaN is not (yet) known. Draw d is the same board in every row. Rows may be filled while it is used.
 */
export interface ReadingDictionary {
  readonly faults: readonly ReadingFault[];
  readonly points: readonly ReadingPoint[];
  readonly draws: number;
  readonly values: Float64Array;
}

/** A reading may be off by this much, ±, in its own unit. */
export type MeterLimit = (mode: TestPoint['mode'], value: number) => number;

/** Throws DiagnosisError when the numbers of a dictionary do not fit each other. */
export function checkShape({ faults, points, draws, values }: ReadingDictionary): void {
  const wanted = (1 + faults.length) * draws * points.length;
  if (draws < 1 || values.length !== wanted)
    throw new DiagnosisError(
      'shape',
      `a dictionary of ${faults.length} faults, ${draws} draws and ${points.length} points has ${wanted} values`,
    );
}
