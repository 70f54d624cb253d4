import { incompleteBeta } from './incomplete-beta.ts';
import { logGamma } from './log-gamma.ts';

/** Density of Student's t with `dof` degrees of freedom (> 0) at t. Student (1908); Abramowitz & Stegun 26.7. */
export function studentDensity(t: number, dof: number): number {
  const logFront = logGamma((dof + 1) / 2) - logGamma(dof / 2) - 0.5 * Math.log(dof * Math.PI);
  return Math.exp(logFront - ((dof + 1) / 2) * Math.log1p((t * t) / dof));
}

/** Chance that Student's t with `dof` degrees of freedom (> 0) is below t. Abramowitz & Stegun 26.7.1 with 26.5.27. */
export function studentBelow(t: number, dof: number): number {
  const tail = 0.5 * incompleteBeta(dof / (dof + t * t), dof / 2, 0.5);
  return t > 0 ? 1 - tail : tail;
}
