import { describe, expect, it } from 'vitest';
import { learnedChance, learnedNormal, learnedRate, learnedTime, randomStream, type RandomStream } from './index.ts';

describe('a learned number', () => {
  it('is the belief before while nothing was done', () => {
    expect(learnedChance(0.7, 4, 0, 0).mean).toBeCloseTo(0.7, 12);
    expect(learnedRate(0.1, 12, 0, 0).mean).toBeCloseTo(0.1, 12);
    expect(learnedTime(20, 3, 0.4, []).mean).toBeCloseTo(20, 12);
  });

  it('goes half way to what came when as many jobs were done as the belief weighs', () => {
    expect(learnedChance(0.5, 4, 4, 0).mean).toBeCloseTo(0.75, 12);
    expect(learnedRate(0.1, 10, 3, 10).mean).toBeCloseTo(0.2, 12);
    expect(
      learnedTime(
        10,
        3,
        0.4,
        [40, 40, 40].map((value) => ({ value, weight: 1 })),
      ).mean,
    ).toBeCloseTo(20, 12);
  });

  it('has limits that hold nine truths in ten', () => {
    const random = randomStream('limits');
    let [inside, tries] = [0, 0];
    for (; tries < 600; tries++) {
      const truth = 0.2 + 0.6 * random();
      const came = Array.from({ length: 30 }, () => random() < truth).filter(Boolean).length;
      const { low, high } = learnedChance(0.5, 2, came, 30 - came);
      if (truth >= low && truth <= high) inside++;
    }
    expect(inside / tries).toBeGreaterThan(0.86);
    expect(inside / tries).toBeLessThan(0.95);
  });

  it('has limits of a mean and a spread that hold nine truths in ten where truths lie as the belief before says', () => {
    const random = randomStream('mean and spread');
    let [means, spreads, tries] = [0, 0, 0];
    for (; tries < 600; tries++) {
      const spread = 0.2 + 0.5 * random();
      const truth = { mean: 3 + spread * Math.SQRT2 * normal(random), spread };
      const values = Array.from({ length: 40 }, () => ({ value: truth.mean + truth.spread * normal(random), weight: 1 }));
      const learned = learnedNormal({ mean: 3, spread: 0.45 }, 0.5, values);
      if (truth.mean >= learned.mean.low && truth.mean <= learned.mean.high) means++;
      if (truth.spread >= learned.spread.low && truth.spread <= learned.spread.high) spreads++;
    }
    for (const inside of [means, spreads]) {
      expect(inside / tries).toBeGreaterThan(0.86);
      expect(inside / tries).toBeLessThan(0.95);
    }
  });

  it('of readings is the reference before where there are none, and lies between it and them where there are some', () => {
    const before = { mean: 3.3, spread: 0.05 };
    const none = learnedNormal(before, 5, []);
    expect([none.mean.mean, none.spread.mean]).toEqual([3.3, expect.closeTo(0.05, 12)]);
    const some = learnedNormal(
      before,
      5,
      [3.4, 3.4, 3.4, 3.4, 3.4].map((value) => ({ value, weight: 1 })),
    );
    expect(some.mean.mean).toBeCloseTo(3.35, 12);
    expect(some.spread.mean).toBeCloseTo(Math.sqrt((5 * 0.05 ** 2 + (25 / 10) * 0.1 ** 2) / 10), 12);
  });

  it('narrows as more is done, and leaves out times of nothing', () => {
    const times = (count: number) => Array.from({ length: count }, (_, i) => ({ value: 10 + (i % 3), weight: 1 }));
    const width = (count: number): number => {
      const { low, high } = learnedTime(12, 3, 0.4, times(count));
      return high / low;
    };
    expect(width(60)).toBeLessThan(width(6));
    expect(learnedTime(12, 3, 0.4, [{ value: 0, weight: 1 }])).toEqual(learnedTime(12, 3, 0.4, []));
  });
});

/** A normal number from two uniform ones. Box & Muller (1958). */
const normal = (random: RandomStream): number => Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());
