import { describe, expect, it } from 'vitest';
import { entropyBits } from './entropy.ts';
import { courseFor, type Cure } from './known-trouble.ts';
import { assertDistribution, meanOf } from './outcomes.ts';

const worth = { workingMinor: 5000, asIsMinor: 1000, hourMinor: 1200 };
const cure = (id: string, mends: Record<string, number>, minutes = 10, partsMinor = 0, risk = 0): Cure => ({
  id,
  mends,
  minutes,
  partsMinor,
  risk,
});

describe('what to do when the trouble is known', () => {
  it('gives up where no cure helps, or where it costs more than it brings', () => {
    expect(courseFor(['f'], [], worth)).toMatchObject({ cures: [], valueMinor: 1000, chance: 0 });
    expect(courseFor(['f'], [cure('dear', { f: 0.9 }, 10, 4000)], worth).cures).toEqual([]);
    expect(courseFor(['g'], [cure('other', { f: 1 })], worth).cures).toEqual([]);
  });

  it('reckons one cure by hand: 0.8 × 5000 + 0.2 × 1000 − 200', () => {
    const course = courseFor(['f'], [cure('clean', { f: 0.8 })], worth);
    expect(course.valueMinor).toBeCloseTo(4000, 9);
    expect(course).toMatchObject({ cures: ['clean'], chance: 0.8, minutes: 10 });
  });

  it('tries a second cure where the first fails, if that pays', () => {
    const course = courseFor(['f'], [cure('clean', { f: 0.5 }), cure('replace', { f: 0.9 }, 30, 300)], worth);
    // 0.5 · (5000 − 200) + 0.5 · (−200 + 0.9 · 5000 + 0.1 · 1000 − 900) = 2400 + 1750
    expect(course.cures).toEqual(['clean', 'replace']);
    expect(course.valueMinor).toBeCloseTo(4150, 9);
    expect(course.chance).toBeCloseTo(0.95, 12);
  });

  it('works on both of two faults, or takes the one cure for both where that is better', () => {
    const two = [cure('a', { f: 0.9 }), cure('b', { g: 0.8 })];
    expect(courseFor(['f', 'g'], two, worth)).toMatchObject({ cures: ['a', 'b'], minutes: 20 });
    expect(courseFor(['f', 'g'], two, worth).chance).toBeCloseTo(0.72, 12);
    expect(courseFor(['f', 'g'], [...two, cure('board', { f: 0.97, g: 0.97 }, 15)], worth).cures).toEqual(['board']);
  });

  it('counts the risk of the work, and its ways to end add up', () => {
    const risky = courseFor(['f'], [cure('a', { f: 0.9 }, 10, 50, 0.2), cure('b', { f: 0.4 })], worth);
    assertDistribution(risky.outcomes);
    expect(meanOf(risky.outcomes)).toBeCloseTo(risky.valueMinor, 9);
    expect(courseFor(['f'], [cure('a', { f: 1 }, 10, 0, 0.2)], worth).chance).toBeCloseTo(0.8, 12);
  });
});

describe('entropy', () => {
  it('is the number of yes-or-no answers: two bits for four equal things, none for a sure one', () => {
    expect(entropyBits([1, 1, 1, 1])).toBeCloseTo(2, 12);
    expect(entropyBits([0.7])).toBe(0);
    expect(entropyBits([0.5, 0.25, 0.25, 0])).toBeCloseTo(1.5, 12);
  });
});
