/**
 * A bank holds all parts of one kind in typed arrays. While a circuit is compiled it asks for unknowns and for entries of the matrix; while an
 * operating point is sought it adds its linearised equations at the present guess. Ground is the index past the last unknown: what is
 * added there is never read, so that no loop needs to ask.
 */
export interface Wiring {
  /** Index of a node's voltage among the unknowns; ground is `ground`. */
  node(name: string): number;
  /** A new unknown that belongs to no node of the netlist: a branch current in A, or an inner node in V. */
  extra(what: 'current' | 'node'): number;
  /** A handle for the matrix entry of this row and column. */
  entry(row: number, col: number): number;
  readonly ground: number;
}

/** What one pass of loading reads and writes. `x` has one more place than there are unknowns, always 0: ground. */
export interface Loading {
  readonly x: Float64Array;
  readonly values: Float64Array;
  readonly rhs: Float64Array;
  /** True once a junction was held back in this pass, or does not yet fit its surroundings: the guess is then not yet the answer. */
  limited: boolean;
  /** Voltage by which an inner node may miss its place in an answer. */
  readonly settledV: number;
}

/** How the parts stand in one solution: by index of the part in the netlist. */
export interface Conditions {
  /** Factor on the principal value of each part (resistance, source, set-point, saturation current); 1 is as written. */
  readonly scale: Float64Array;
  /** 1 takes the part out of the circuit (an open). */
  readonly removed: Uint8Array;
  /** Siemens across the first two nodes of the part (a short or a leak); 0 is none. */
  readonly bridge: Float64Array;
}

export interface Bank {
  /** Whether what it loads depends on the guess; the others load the same until they are prepared anew. */
  readonly bends: boolean;
  /** Turns handles into places in the matrix values; called again when the order of pivots changes. */
  bind(places: Int32Array): void;
  /** Takes over the conditions and forgets the last guess (`x` is the new one). */
  prepare(conditions: Conditions, x: Float64Array, sourceShare: number): void;
  load(into: Loading): void;
}

/** Thermal voltage kT/q in V (CODATA 2018: k and q exact). */
export const thermalVoltage = (temperatureK: number): number => (1.380649e-23 / 1.602176634e-19) * temperatureK;

/** Conductance across every junction, S: the same as the usual default of simulators of this notation. */
export const JUNCTION_GMIN = 1e-12;

/**
 * A part whose voltages (and current, A) move by less than this, V, keeps the straight lines that it was last given: for a junction the error of its current
 * is below (δ/nVt)²/2 ≈ 1e-7 of it.
 */
export const KEEPS_LINE_V = 1e-5;
