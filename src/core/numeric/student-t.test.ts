import { describe, expect, it } from 'vitest';
import { incompleteBeta, logGamma, studentBelow, studentDensity } from './index.ts';

describe('logGamma', () => {
  it('is the logarithm of a factorial at whole numbers', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      expect(logGamma(n)).toBeCloseTo(Math.log(factorial), 11);
      factorial *= n;
    }
  });

  it('knows that Γ(1/2) squared is π', () => {
    expect(2 * logGamma(0.5)).toBeCloseTo(Math.log(Math.PI), 12);
    expect(logGamma(0)).toBeNaN();
  });
});

describe('incompleteBeta', () => {
  it('is the binomial tail where the parameters are whole', () => {
    // I_x(2, 3) is the chance of at least 2 successes in 4 trials.
    for (const x of [0.1, 0.35, 0.5, 0.8]) {
      const y = 1 - x;
      expect(incompleteBeta(x, 2, 3)).toBeCloseTo(6 * x ** 2 * y ** 2 + 4 * x ** 3 * y + x ** 4, 12);
    }
    expect([incompleteBeta(0, 2, 3), incompleteBeta(1, 2, 3)]).toEqual([0, 1]);
  });
});

describe("Student's t", () => {
  it('has the closed forms of one and of two degrees of freedom', () => {
    for (const t of [-30, -2, -0.1, 0, 0.7, 4, 500]) {
      expect(studentBelow(t, 1)).toBeCloseTo(0.5 + Math.atan(t) / Math.PI, 12);
      expect(studentBelow(t, 2)).toBeCloseTo(0.5 + t / (2 * Math.sqrt(2 + t * t)), 12);
      expect(studentDensity(t, 1)).toBeCloseTo(1 / (Math.PI * (1 + t * t)), 12);
    }
  });

  it('has its density as the slope of its chance', () => {
    for (const dof of [1, 3, 7.5, 40])
      for (const t of [-2, 0.3, 1.9])
        expect((studentBelow(t + 1e-4, dof) - studentBelow(t - 1e-4, dof)) / 2e-4).toBeCloseTo(studentDensity(t, dof), 6);
  });
});
