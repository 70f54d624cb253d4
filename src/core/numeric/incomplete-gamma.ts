import { logGamma } from './log-gamma.ts';
import { whereReaches } from './quantile-of.ts';

const MOST_TERMS = 1000;

/**
 * Regularised lower incomplete gamma function P(a, x) for a > 0, x ≥ 0, to about 1e-13: the series 6.5.29 of Abramowitz & Stegun (1964) below
 * x = a + 1, the continued fraction 6.5.31 by the method of Lentz (1976) above.
 */
export function incompleteGamma(a: number, x: number): number {
  if (x <= 0) return 0;
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  return x < a + 1 ? front * series(a, x) : 1 - front * fraction(a, x);
}

function series(a: number, x: number): number {
  let term = 1 / a;
  let sum = term;
  for (let n = 1; n < MOST_TERMS && term > 1e-17 * sum; n++) {
    term *= x / (a + n);
    sum += term;
  }
  return sum;
}

function fraction(a: number, x: number): number {
  let b = x + 1 - a;
  let c = 1e300;
  let d = 1 / b;
  let value = d;
  for (let i = 1; i < MOST_TERMS; i++) {
    const step = -i * (i - a);
    b += 2;
    d = 1 / (step * d + b);
    c = b + step / c;
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return value;
}

/** The value that a gamma variable of this shape and rate stays below with chance p, 0 ≤ p < 1. */
export function gammaQuantile(p: number, shape: number, rate: number): number {
  let high = shape + 10;
  while (incompleteGamma(shape, high) < p && high < 1e12) high *= 2;
  return whereReaches((x) => incompleteGamma(shape, x), p, 0, high) / rate;
}
