import { describe, expect, it } from 'vitest';
import { learnedChance, learnedRate, learnedTime, randomStream } from './index.ts';

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
