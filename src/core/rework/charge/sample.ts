/** One row of a log: amps count positive into the cell. */
export interface ChargeSample {
  readonly seconds: number;
  readonly volts: number;
  readonly amps: number;
  readonly celsius?: number;
}

/** A stretch of time of which no rows are there. */
export interface Gap {
  /** Index of the first sample after it. */
  readonly row: number;
}
