import { median } from './robust.ts';

/**
 * Slope of a line through points that a minority of wild ones cannot move: the median of all slopes between two points with different x.
 * Theil (1950), Sen (1968). NaN without two different x.
 */
export function theilSenSlope(x: readonly number[], y: readonly number[]): number {
  return median(x.flatMap((from, i) => x.slice(i + 1).flatMap((to, k) => (to === from ? [] : [(y[i + 1 + k]! - y[i]!) / (to - from)]))));
}

/** The line's value at 0 as the median of what is left of each point; the other usual convention, median y − slope × median x, differs. */
export const theilSenIntercept = (x: readonly number[], y: readonly number[], slope: number): number =>
  median(y.map((value, i) => value - slope * x[i]!));
