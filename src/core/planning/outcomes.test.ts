import { describe, expect, it } from 'vitest';
import { assertDistribution, chanceBelow, meanOf, quantileOf, shiftedBy } from './outcomes.ts';
import { normalQuantile } from './normal-quantile.ts';
import { priceSpread, spreadAbove } from './price-spread.ts';
import { sumOf, sumOfAlike } from './sum-of-lot.ts';

const coin = [
  { valueMinor: 0, chance: 0.5 },
  { valueMinor: 100, chance: 0.5 },
];

describe('outcomes', () => {
  it('gives the mean, the tenths and the chance of ending below a price', () => {
    expect(meanOf(coin)).toBe(50);
    expect([quantileOf(coin, 0.1), quantileOf(coin, 0.5), quantileOf(coin, 0.9)]).toEqual([0, 0, 100]);
    expect([chanceBelow(coin, 0), chanceBelow(coin, 1), chanceBelow(coin, 101)]).toEqual([0, 0.5, 1]);
    expect(meanOf(shiftedBy(coin, -20))).toBe(30);
  });

  it('refuses chances that do not add up to one, and values that are not numbers', () => {
    expect(() => assertDistribution([{ valueMinor: 1, chance: 0.4 }])).toThrow(/add up to 1/);
    expect(() => assertDistribution([{ valueMinor: Number.NaN, chance: 1 }])).toThrow(/add up to 1/);
    expect(() => assertDistribution([])).toThrow(/add up to 1/);
  });
});

describe('the spread of a price', () => {
  it('matches the tables of the normal distribution', () => {
    // Abramowitz & Stegun (1964), table 26.5, from memory: z(0.9) = 1.28155, z(0.975) = 1.95996, z(0.99) = 2.32635.
    for (const [p, z] of [
      [0.5, 0],
      [0.9, 1.28155],
      [0.975, 1.95996],
      [0.99, 2.32635],
      [0.1, -1.28155],
    ] as const)
      expect(normalQuantile(p)).toBeCloseTo(z, 5);
    expect(() => normalQuantile(1)).toThrow(/from 0.001/);
  });

  it('averages the typical price and widens with the spread of its logarithm', () => {
    const narrow = priceSpread(5000, 0.1);
    const wide = priceSpread(5000, 0.4);
    expect(meanOf(narrow)).toBeCloseTo(5000, 6);
    expect(meanOf(wide)).toBeCloseTo(5000, 6);
    const width = (o: typeof wide) => quantileOf(o, 0.9) - quantileOf(o, 0.1);
    expect(width(wide)).toBeGreaterThan(3 * width(narrow));
    expect(quantileOf(priceSpread(5000, 0), 0.1)).toBeCloseTo(5000, 6);
  });

  it('spreads only the endings that contain the sale and keeps the mean', () => {
    const spread = spreadAbove(coin, 10, 150, 0.3);
    expect(meanOf(spread)).toBeCloseTo(50, 9);
    expect(chanceBelow(spread, 10)).toBeGreaterThanOrEqual(0.5);
    expect(spread[0]).toEqual(coin[0]);
  });
});

describe('the sum over a lot', () => {
  it('is the binomial distribution for units that bring all or nothing', () => {
    const four = sumOfAlike(coin, 4);
    // Binomial(4, 1/2): 1, 4, 6, 4, 1 sixteenths.
    const of = (value: number) => four.filter((o) => o.valueMinor === value).reduce((s, o) => s + o.chance, 0);
    expect([0, 100, 200, 300, 400].map((v) => of(v) * 16)).toEqual([1, 4, 6, 4, 1]);
  });

  it('keeps the mean exactly and the spread nearly for a large lot', () => {
    const lot = sumOfAlike(priceSpread(3000, 0.4), 200);
    expect(meanOf(lot)).toBeCloseTo(600_000, 3);
    const unit = priceSpread(3000, 0.4);
    const variance = unit.reduce((s, o) => s + o.chance * (o.valueMinor - 3000) ** 2, 0) * 200;
    const got = lot.reduce((s, o) => s + o.chance * (o.valueMinor - 600_000) ** 2, 0);
    expect(Math.abs(Math.sqrt(got / variance) - 1)).toBeLessThan(0.02);
    expect(lot.reduce((s, o) => s + o.chance, 0)).toBeCloseTo(1, 9);
  });

  it('of two different units is every pair of their endings', () => {
    expect(meanOf(sumOf(coin, [{ valueMinor: 7, chance: 1 }]))).toBe(57);
    expect(() => sumOfAlike(coin, 0)).toThrow(/1 unit or more/);
  });
});
