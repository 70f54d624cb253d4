import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { huberLocation, median, medianDeviation } from './robust.ts';

describe('robust location', () => {
  it('takes the middle of an odd and the mean of the two middles of an even sample', () => {
    expect(median([5, 1, 9])).toBe(5);
    expect(median([5, 1, 9, 6])).toBe(5.5);
    expect(median([])).toBeNaN();
  });

  it('keeps its head when one value goes wild', () => {
    const calm = [3.31, 3.29, 3.3, 3.32, 3.28];
    expect(huberLocation([...calm, 400])).toBeCloseTo(3.3, 1);
    expect(medianDeviation([...calm, 400])).toBeLessThan(0.05);
  });

  it('is the median when more than half of the values are the same', () => {
    expect(huberLocation([2, 2, 2, 7])).toBe(2);
  });

  it('moves and scales with the sample', () => {
    const sample = fc.array(fc.double({ min: -100, max: 100, noNaN: true }), { minLength: 3, maxLength: 20 });
    fc.assert(
      fc.property(sample, fc.integer({ min: -50, max: 50 }), (values, shift) => {
        const moved = values.map((value) => 2 * value + shift);
        expect(huberLocation(moved)).toBeCloseTo(2 * huberLocation(values) + shift, 5);
        expect(medianDeviation(moved)).toBeCloseTo(2 * medianDeviation(values), 9);
      }),
    );
  });
});
