import { expect, test } from 'vitest';
import { holm, welch } from './index.ts';

const group = (values: readonly number[]) => {
  const mean = values.reduce((sum, value) => sum + value, 0) / values.length;
  const spread = Math.sqrt(values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (values.length - 1));
  return { mean, spread, count: values.length };
};

test('hours of extra sleep under two drugs give the figures that are published with them', () => {
  // Student (1908), as the data set `sleep` of R; t.test(extra ~ group, data = sleep) prints t = -1.8608, df = 17.776, p-value = 0.07939.
  const one = group([0.7, -1.6, -0.2, -1.2, -0.1, 3.4, 3.7, 0.8, 0, 2]);
  const other = group([1.9, 0.8, 1.1, 0.1, -0.1, 4.4, 5.5, 1.6, 4.6, 3.4]);
  const found = welch(one, other);
  expect(found.t).toBeCloseTo(-1.8608, 4);
  expect(found.dof).toBeCloseTo(17.776, 3);
  expect(found.chance).toBeCloseTo(0.07939, 5);
});

test('it does not matter which group comes first, nor in which unit they are', () => {
  const [one, other] = [group([1, 2, 3]), group([4, 6, 9])];
  const scaled = (each: typeof one) => ({ ...each, mean: each.mean * 1e-3, spread: each.spread * 1e-3 });
  expect(welch(one, other).chance).toBeCloseTo(welch(other, one).chance, 12);
  expect(welch(scaled(one), scaled(other)).chance).toBeCloseTo(welch(one, other).chance, 12);
});

test('many findings are put right for their number, in the order in which they came', () => {
  // Worked by hand after Holm (1979): sorted 0.005, 0.01, 0.03, 0.04 times 4, 3, 2, 1, never falling.
  const [a, b, c, d] = holm([0.01, 0.04, 0.03, 0.005]);
  expect(a).toBeCloseTo(0.03, 12);
  expect(b).toBeCloseTo(0.06, 12);
  expect(c).toBeCloseTo(0.06, 12);
  expect(d).toBeCloseTo(0.02, 12);
  expect(holm([0.9, 0.8])).toEqual([1, 1]);
});
