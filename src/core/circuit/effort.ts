/** How hard to try. Defaults in `DEFAULT_EFFORT`. */
export interface Effort {
  /** Newton steps before one attempt is given up. */
  readonly iterations: number;
  /** Longest step of a node voltage, V, and of a branch current, A. */
  readonly stepV: number;
  readonly stepA: number;
  /** An answer stands when no voltage moves by more than this, V, plus `relative` of itself. */
  readonly absoluteV: number;
  readonly absoluteA: number;
  readonly relative: number;
  /** Shunt from each node to ground, S: 1 GΩ keeps floating nodes somewhere. */
  readonly shuntS: number;
}

export const DEFAULT_EFFORT: Effort = {
  iterations: 40,
  stepV: 1,
  stepA: 0.5,
  absoluteV: 1e-7,
  absoluteA: 1e-10,
  relative: 1e-7,
  shuntS: 1e-9,
};
