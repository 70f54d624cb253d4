import { incompleteBeta } from './incomplete-beta.ts';
import { studentBelow } from './student-t.ts';

const ROUNDS = 200;

/** Where a rising function first reaches p, between two limits, by halving to the last bit. */
export function whereReaches(below: (x: number) => number, p: number, low: number, high: number): number {
  let [from, to] = [low, high];
  for (let i = 0; i < ROUNDS; i++) {
    const middle = (from + to) / 2;
    if (middle <= from || middle >= to) break;
    if (below(middle) < p) from = middle;
    else to = middle;
  }
  return (from + to) / 2;
}

/** The value that Beta(a, b) stays below with chance p, 0..1. */
export const betaQuantile = (p: number, a: number, b: number): number => whereReaches((x) => incompleteBeta(x, a, b), p, 0, 1);

/** The value that Student's t stays below with chance p, 0 < p < 1. */
export function studentQuantile(p: number, dof: number): number {
  if (p === 0.5) return 0;
  let reach = 2;
  while (studentBelow(reach, dof) < Math.max(p, 1 - p) && reach < 1e12) reach *= 2;
  return whereReaches((t) => studentBelow(t, dof), p, -reach, reach);
}
