/**
 * Equations of one behavioural part. `v` holds the voltages of its nodes in the order of BEHAVIOURS, then its own current I where it has one.
 * `evaluate` writes into `out` the current into the part at each node, then the residual that is to vanish, in V; and into `slope` the
 * derivatives, row by row of `out`, column by column of `v`. `scale` multiplies the set-point, or the current of a load.
 */
export interface BoardLaw {
  /** Length of `v` and of `out`. */
  readonly unknowns: number;
  /** Whether the last of them is its own current. */
  readonly ownCurrent: boolean;
  evaluate(v: Float64Array, scale: number, out: Float64Array, slope: Float64Array): void;
}

/** Parameters of a part by lower-case name, all present. */
export type Params = Readonly<Record<string, number>>;

/** Lowest input voltage that a converter's balance of power is computed with, so that an input at 0 V stays finite. */
export const FLOOR_V = 0.3;

/** Width of the change from off to on by an enable pin or by the lock-out of low input, V. */
export const ENABLE_WIDTH_V = 0.02;
