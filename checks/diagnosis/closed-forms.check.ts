import { describe, expect, it } from 'vitest';
import { believe, type DeviceModel, type Evidence } from '../../src/core/diagnosis/index.ts';

/** One fault, no unknown: the belief is one number, and each piece of evidence one likelihood ratio. */
const LAMP: DeviceModel = {
  faults: [
    {
      id: 'bulb-open',
      block: 'bulb',
      rate: 0.5,
      behaves: { works: 0, 'comes-and-goes': 0, fails: 1 },
      seen: {},
      shifts: { 'bulb-v': 'any' },
    },
  ],
  functions: [{ id: 'light', needs: [['bulb']] }],
  accessories: [],
  points: [{ id: 'bulb-v', block: 'bulb', mode: 'diode', reference: { mean: 0.6, spread: 0.02, boards: 3 } }],
  checks: [],
  remedies: [],
  unknownRate: 0,
};

const odds = (...evidence: Evidence[]): number => {
  const chance = believe(LAMP, evidence).marginal.get('bulb-open')!;
  return chance / (1 - chance);
};
const claim = (honesty: number): Evidence => ({ id: 'c', kind: 'claim', function: 'light', says: 'fails', honesty });

describe('closed forms', () => {
  it('Bayes by odds: a claim mixes the truth with what is said anyway, in proportion to honesty', () => {
    // With honesty h the ratio is (h·a + (1 − h)·g) / (h·b + (1 − h)·g); h = 1 gives a/b, and two more values of h must agree on g.
    const [a, b] = [0.97 + 0.01, 0.01];
    const ratioAt = (h: number): number => odds(claim(h)) / odds();
    expect(ratioAt(1)).toBeCloseTo(a / b, 9);
    expect(ratioAt(0)).toBeCloseTo(1, 12);
    const guessFrom = (h: number): number => (h * (a - ratioAt(h) * b)) / ((ratioAt(h) - 1) * (1 - h));
    expect(guessFrom(0.3)).toBeCloseTo(guessFrom(0.8), 9);
    expect(guessFrom(0.3)).toBeGreaterThan(0);
    expect(guessFrom(0.3)).toBeLessThan(1);
  });

  it('the predictive of a normal sample with unknown mean and spread: Student t with n − 1 degrees and s·√(1 + 1/n)', () => {
    // Two degrees of freedom have the density (2 + t²)^(−3/2); under "any" the density of 0.9 V and of 0.65 V differ by the normal part alone,
    // so ratios of odds between values near the middle follow the t to within the share of slips (3 in 100) and of that part.
    const scale = 0.02 * Math.sqrt(1 + 1 / 3);
    const t = (volts: number): number => (volts - 0.6) / scale;
    const student = (volts: number): number => (2 + t(volts) ** 2) ** -1.5 / scale;
    const at = (volts: number): number => odds() / odds({ id: 'r', kind: 'reading', point: 'bulb-v', value: volts });
    // 1/ratio = (u + w·T)/T' : affine in 1/T with the same two constants at every value inside the meter's even range.
    const inverse = (volts: number): readonly [x: number, y: number] => [1 / student(volts), 1 / at(volts)];
    const points = [0.6, 0.62, 0.64, 0.66].map(inverse);
    const slope = (i: number): number => (points[i + 1]![1] - points[i]![1]) / (points[i + 1]![0] - points[i]![0]);
    expect(slope(1) / slope(0)).toBeGreaterThan(0.98);
    expect(slope(1) / slope(0)).toBeLessThan(1.02);
    expect(slope(2) / slope(0)).toBeGreaterThan(0.95);
    expect(slope(2) / slope(0)).toBeLessThan(1.05);
  });
});
