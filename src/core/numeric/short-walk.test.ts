import { describe, expect, it } from 'vitest';
import { randomStream } from './random.ts';
import { lengthOf, shortWalk, type WalkCost } from './short-walk.ts';

type Cost = WalkCost;

function orders(stops: readonly number[]): number[][] {
  return stops.length < 2
    ? [[...stops]]
    : stops.flatMap((first) => orders(stops.filter((each) => each !== first)).map((rest) => [first, ...rest]));
}

/** Places in the plane, and a change of setting that costs more than any way. */
function randomCost(seed: string, count: number): Cost {
  const random = randomStream(seed);
  const stops = Array.from({ length: count + 1 }, () => ({
    x: random(),
    y: random(),
    setting: Math.floor(3 * random()),
  }));
  return (from, to) => {
    const [a, b] = [stops[from + 1]!, stops[to + 1]!];
    return Math.hypot(a.x - b.x, a.y - b.y) + (a.setting === b.setting ? 0 : 5);
  };
}

describe('a short walk', () => {
  it('goes to every stop once', () => {
    expect(shortWalk(0, () => 1)).toEqual([]);
    expect(shortWalk(30, randomCost('all', 30)).toSorted((a, b) => a - b)).toEqual(Array.from({ length: 30 }, (_, i) => i));
  });

  it('is as short as the shortest of all orders for almost all small cases, and never 5 % longer', () => {
    const ratios = Array.from({ length: 40 }, (_, i) => {
      const cost = randomCost(`small-${i}`, 7);
      const shortest = Math.min(...orders([0, 1, 2, 3, 4, 5, 6]).map((order) => lengthOf(order, cost)));
      return lengthOf(shortWalk(7, cost), cost) / shortest;
    });
    expect(ratios.filter((ratio) => ratio < 1 + 1e-9).length).toBeGreaterThanOrEqual(36);
    expect(Math.max(...ratios)).toBeLessThan(1.05);
  });

  it('changes a setting that costs much as seldom as can be', () => {
    const cost: Cost = (from, to) => (from >= 0 && to >= 0 && from % 3 === to % 3 ? 0 : 10) + Math.abs(to - from) / 1000;
    const settings = shortWalk(24, cost).map((stop) => stop % 3);
    expect(settings.filter((setting, i) => i > 0 && setting !== settings[i - 1]).length).toBe(2);
  });
});
