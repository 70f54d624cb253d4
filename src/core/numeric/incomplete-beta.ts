import { logGamma } from './log-gamma.ts';

const TINY = 1e-300;
const MOST_TERMS = 400;

/**
 * Regularised incomplete beta function I_x(a, b) for a, b > 0 and 0 ≤ x ≤ 1, to about 1e-13. Continued fraction 26.5.8 of
 * Abramowitz & Stegun (1964), evaluated by the method of Lentz (1976); the symmetry 26.5.2 where it converges faster.
 */
export function incompleteBeta(x: number, a: number, b: number): number {
  if (x <= 0) return 0;
  if (x >= 1) return 1;
  if (x > (a + 1) / (a + b + 2)) return 1 - incompleteBeta(1 - x, b, a); // 26.5.2
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x)) / a;
  return front / fraction(x, a, b);
}

/** 1 + d₁/(1 + d₂/(1 + …)) with the d of 26.5.8. */
function fraction(x: number, a: number, b: number): number {
  let value = 1;
  let c = 1;
  let d = 0;
  for (let i = 1; i <= MOST_TERMS; i++) {
    const m = i >> 1;
    const step = i % 2 === 0 ? (m * (b - m) * x) / ((a + i - 1) * (a + i)) : (-(a + m) * (a + b + m) * x) / ((a + i - 1) * (a + i));
    d = 1 / orTiny(1 + step * d);
    c = orTiny(1 + step / c);
    value *= c * d;
    if (Math.abs(c * d - 1) < 1e-15) break;
  }
  return value;
}

const orTiny = (value: number): number => (Math.abs(value) < TINY ? TINY : value);
