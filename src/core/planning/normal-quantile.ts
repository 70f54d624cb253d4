import { PlanningError } from './planning-error.ts';

/** Chance that a standard normal variable is below `x`. Series of Abramowitz & Stegun (1964), 26.2.11; good for |x| below 6. */
function normalBelow(x: number): number {
  let term = x;
  let sum = x;
  for (let k = 1; k < 200 && Math.abs(term) > 1e-17; k++) {
    term *= (x * x) / (2 * k + 1);
    sum += term;
  }
  return 0.5 + normalDensity(x) * sum; // A&S 26.2.11
}

const normalDensity = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI);

/**
 * The value that a standard normal variable stays below with chance `p`, 0.001 ≤ p ≤ 0.999, by Newton's method on its
 * distribution from the middle. Throws `PlanningError` outside: the start is not good enough there.
 */
export function normalQuantile(p: number): number {
  if (!(p >= 0.001 && p <= 0.999)) throw new PlanningError('bad-chance', `the chance must be from 0.001 to 0.999, got ${p}`);
  let x = 0;
  for (let i = 0; i < 40; i++) {
    const step = (normalBelow(x) - p) / normalDensity(x);
    x -= Math.max(-0.5, Math.min(0.5, step));
    if (Math.abs(step) < 1e-13) break;
  }
  return x;
}
