import { studentBelow, studentDensity } from '../numeric/index.ts';

/** How the numbers of a reading scatter, on some scale; its mass is 1. */
export interface Spread {
  density(x: number): number;
  /** Chance of a number below x. */
  below(x: number): number;
}

/** Student's t at a centre. */
export const studentSpread = (centre: number, scale: number, dof: number): Spread => ({
  density: (x) => studentDensity((x - centre) / scale, dof) / scale,
  below: (x) => studentBelow((x - centre) / scale, dof),
});

/** Evenly between two ends, `from` < `to`. */
export const evenSpread = (from: number, to: number): Spread => ({
  density: (x) => (x >= from && x <= to ? 1 / (to - from) : 0),
  below: (x) => Math.min(1, Math.max(0, (x - from) / (to - from))),
});

/** A mixture; the shares sum to 1. */
export const mixedSpread = (parts: readonly (readonly [share: number, spread: Spread])[]): Spread => ({
  density: (x) => parts.reduce((sum, [share, spread]) => sum + share * spread.density(x), 0),
  below: (x) => parts.reduce((sum, [share, spread]) => sum + share * spread.below(x), 0),
});
