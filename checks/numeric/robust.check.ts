import { describe, expect, it } from 'vitest';
import { huberLocation, median, medianDeviation } from '../../src/core/numeric/index.ts';

/** Copper in wholemeal flour, µg/g, and nickel in a rock, µg/g; see SOURCE.md. */
const COPPER = [
  2.9, 3.1, 3.4, 3.4, 3.7, 3.7, 2.8, 2.5, 2.4, 2.4, 2.7, 2.2, 5.28, 3.37, 3.03, 3.03, 28.95, 3.77, 3.4, 2.2, 3.5, 3.6, 3.7, 3.7,
];
const NICKEL = [5.2, 6.5, 6.9, 7, 7, 7, 7.4, 8, 8, 8, 8, 8.5, 9, 9, 10, 11, 11, 12, 12, 13.7, 14, 14, 14, 16, 17, 17, 18, 24, 28, 34, 125];
const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

describe('robust location against published samples', () => {
  it('holds the copper with its one wild value', () => {
    expect(COPPER).toHaveLength(24);
    expect(mean(COPPER)).toBeCloseTo(4.280416667, 9);
    expect(median(COPPER)).toBeCloseTo(3.385, 12);
    expect(medianDeviation(COPPER)).toBeCloseTo(0.526323, 9);
    expect(Math.abs(huberLocation(COPPER) - 3.20672413)).toBeLessThan(1e-6);
  });

  it('holds the nickel with its long tail', () => {
    expect(NICKEL).toHaveLength(31);
    expect(mean(NICKEL)).toBeCloseTo(16.006451613, 9);
    expect(median(NICKEL)).toBe(11);
    expect(medianDeviation(NICKEL)).toBeCloseTo(4.4478, 9);
    expect(Math.abs(huberLocation(NICKEL) - 11.55136004)).toBeLessThan(1e-5);
  });
});
