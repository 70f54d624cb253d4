import { describe, expect, it } from 'vitest';
import {
  betaQuantile,
  brierScore,
  brierSplit,
  calibrationBands,
  gammaQuantile,
  incompleteGamma,
  normalQuantile,
  studentQuantile,
} from './index.ts';

describe('a quantile', () => {
  it('of the beta distribution is where its chance is reached', () => {
    expect(betaQuantile(0.5, 1, 1)).toBeCloseTo(0.5, 14);
    // Beta(1, b): 1 − (1 − p)^(1/b).
    expect(betaQuantile(0.05, 1, 9)).toBeCloseTo(1 - 0.95 ** (1 / 9), 12);
  });

  it("of Student's t has both signs and is the normal one for many degrees of freedom", () => {
    expect(studentQuantile(0.975, 10)).toBeCloseTo(2.228138852, 8);
    expect(studentQuantile(0.025, 10)).toBeCloseTo(-2.228138852, 8);
    expect(studentQuantile(0.9, 1e7)).toBeCloseTo(1.2815516, 5);
    expect(studentQuantile(0.5, 3)).toBe(0);
  });

  it('of the normal distribution is that of the tables', () => {
    // Abramowitz & Stegun (1964), table 26.5.
    expect(normalQuantile(0.975)).toBeCloseTo(1.95996398, 8);
    expect(normalQuantile(0.01)).toBeCloseTo(-2.32634787, 8);
    expect(normalQuantile(0.5)).toBe(0);
  });

  it('of the gamma distribution is that of the exponential for shape 1, and scales with its rate', () => {
    expect(gammaQuantile(0.9, 1, 2)).toBeCloseTo(-Math.log(0.1) / 2, 12);
    // Erlang of two stages: 1 − e^−x (1 + x).
    for (const x of [0.3, 1, 4, 20]) expect(incompleteGamma(2, x)).toBeCloseTo(1 - Math.exp(-x) * (1 + x), 12);
    expect(incompleteGamma(3, 0)).toBe(0);
  });
});

describe('calibration', () => {
  const forecasts = [0.1, 0.9, 0.8, 0.3].map((chance, i) => ({ chance, came: i === 1 || i === 2 }));

  it("is scored by Brier's mean of squares, one class counted", () => {
    // G. W. Brier, Monthly Weather Review 78 (1950); the example from memory.
    expect(brierScore(forecasts)).toBeCloseTo(0.0375, 15);
  });

  it('splits the score without a rest when each band says one chance only', () => {
    const said = [...Array(10).keys()].flatMap((i) => [0.25, 0.75].map((chance) => ({ chance, came: i < 10 * chance - 1 })));
    const { score, calibration, resolution, uncertainty, withinBands } = brierSplit(said, 4);
    expect(calibration - resolution + uncertainty).toBeCloseTo(score, 12);
    expect(withinBands).toBeCloseTo(0, 12);
    expect(resolution).toBeGreaterThan(0);
  });

  it('puts a chance of one into the last band and leaves empty bands without a mean', () => {
    const bands = calibrationBands([{ chance: 1, came: true }], 5);
    expect(bands[4]).toMatchObject({ count: 1, said: 1, came: 1 });
    expect(bands[0]!.said).toBeNaN();
  });
});
