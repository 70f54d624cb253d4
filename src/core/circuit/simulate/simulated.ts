/** Readings of many faulted boards. */
export interface Simulated {
  /** Set by set, draw by draw, point by point. V, Ω, V of drop; Infinity is OL. Rows that failed or were not reached hold NaN. */
  readonly values: Float64Array;
  /** Sets, draws and points of `values`. */
  readonly shape: readonly [sets: number, draws: number, points: number];
  /** Operating points that were not found. */
  readonly failures: number;
  /** Sets that are finished; fewer than there are when it was stopped. */
  readonly done: number;
}

export const emptyValues = (sets: number, draws: number, points: number): Float64Array => new Float64Array(sets * draws * points).fill(NaN);
