import { expect, it } from 'vitest';
import { thinned, ticks, timeWords } from './plot-frame.ts';

it('marks are round numbers that hold the curve between them', () => {
  expect(ticks([3.06, 4.2])).toEqual([3, 3.5, 4, 4.5]);
  expect(ticks([0, 0.5])).toEqual([0, 0.2, 0.4, 0.6]);
  expect(ticks([25, 245, 260])).toEqual([0, 100, 200, 300]);
  const flat = ticks([4, 4]);
  expect(flat[0]!).toBeLessThanOrEqual(4);
  expect(flat.at(-1)!).toBeGreaterThan(flat[0]!);
});

it('a long curve keeps its highest and lowest points, in the order of time', () => {
  const points = Array.from({ length: 20_000 }, (_, i): [number, number] => [i, i === 7777 ? 9 : i === 7778 ? -9 : Math.sin(i / 500)]);
  const few = thinned(points);
  expect(few.length).toBeLessThan(700);
  expect(few.some(([, value]) => value === 9) && few.some(([, value]) => value === -9)).toBe(true);
  expect(few.every(([seconds], i) => i === 0 || seconds >= few[i - 1]![0])).toBe(true);
  expect(thinned(points.slice(0, 10))).toHaveLength(10);
});

it('times are in the unit of the whole', () => {
  expect([timeWords(90, 300), timeWords(1800, 3600), timeWords(5400, 20_000)]).toEqual(['90 s', '30 min', '1.5 h']);
});
