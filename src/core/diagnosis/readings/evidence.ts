import type { Behaviour } from '../model.ts';
import type { Kernels } from './kernels.ts';

/** What is known of a unit through its circuit. A reading of null is OL; `honesty` is the chance that a claim is more than a guess. */
export type ReadingEvidence = { readonly id: string } & (
  | { readonly kind: 'reading'; readonly point: string; readonly value: number | null }
  | { readonly kind: 'function'; readonly function: string; readonly outcome: Behaviour; readonly honesty?: number }
);

/** Readings of pairs of faults: pair by pair, draw by draw, point by point, as in a dictionary. Faults and points are indices. */
export type SimulatePairs = (pairs: readonly (readonly [number, number])[], points: readonly number[]) => Float64Array;

/** The circuit as it stood for a while: what was already certain (a missing part, a remedy) is in its dictionary. */
export interface Baseline {
  readonly kernels: Kernels;
  /** By function, chance that it works, row by row and draw by draw; derived from the circuit by the caller. */
  readonly functions: ReadonlyMap<string, Float32Array>;
  /** Without it pairs are judged by the two faults apart. */
  readonly simulate?: SimulatePairs;
}

/** Evidence while the circuit stood so. All stretches of a unit have the same faults and draws; `mends` are chances by fault that what ended it removed them. */
export interface Stretch {
  readonly baseline: Baseline;
  readonly evidence: readonly ReadingEvidence[];
  readonly mends?: Readonly<Record<string, number>>;
}
