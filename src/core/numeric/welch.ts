import { studentBelow } from './student-t.ts';

/** A group of values by its location, its spread (as a standard deviation, above zero) and how many there are. */
export interface Group {
  readonly mean: number;
  readonly spread: number;
  readonly count: number;
}

export interface Welch {
  readonly t: number;
  readonly dof: number;
  /** Chance of a difference at least as large where there is none, on both sides. */
  readonly chance: number;
}

/**
 * Whether two groups of unlike spread have one mean: Welch's t (1947) with the degrees of freedom of Satterthwaite (1946). A group of one counts with one
 * degree of freedom, for its spread is then known from elsewhere.
 */
export function welch(one: Group, other: Group): Welch {
  const [a, b] = [one.spread ** 2 / one.count, other.spread ** 2 / other.count];
  const t = (one.mean - other.mean) / Math.sqrt(a + b);
  const dof = (a + b) ** 2 / (a ** 2 / Math.max(1, one.count - 1) + b ** 2 / Math.max(1, other.count - 1));
  return { t, dof, chance: 2 * studentBelow(-Math.abs(t), dof) };
}
