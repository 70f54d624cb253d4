import { expect, it } from 'vitest';
import { basketSums, bestBaskets } from './basket.ts';
import { problemOf } from './problem.ts';
import { twoPlayers } from './testing/two-players.ts';

const screws = { id: 'screws', stock: 2, keptMinor: 5, fills: [] };
const springs = { id: 'springs', stock: 0, keptMinor: 0, fills: [] };
const problem = problemOf(
  twoPlayers({
    parts: [screws, springs],
    suppliers: [
      {
        id: 'near',
        postageMinor: 300,
        days: 2,
        offers: [
          { part: 'screws', unitMinor: 50, least: 1 },
          { part: 'springs', unitMinor: 90, least: 1 },
        ],
      },
      { id: 'far', postageMinor: 100, days: 20, offers: [{ part: 'screws', unitMinor: 10, least: 10 }] },
      { id: 'too far', postageMinor: 0, days: 90, offers: [{ part: 'springs', unitMinor: 1, least: 1 }] },
    ],
  }),
);
const needs = (...counts: number[]) => Int32Array.from(counts);

it('buys nothing that the drawer has, and counts what is left there', () => {
  expect(bestBaskets(problem, needs(1, 0))).toEqual({ lines: [], costMinor: 0, waitMinor: 0, leftMinor: 5 });
});

it('pays the least of postage, unit prices and minimum quantities together', () => {
  // Three screws are missing: near 300 + 150, far 100 + 10 · 10 for ten of which seven stay at 5.
  expect(bestBaskets(problem, needs(5, 0))).toMatchObject({
    lines: [{ part: 0, supplier: 1, count: 10, costMinor: 100 }],
    costMinor: 200,
    leftMinor: 35,
  });
  // With springs, near is paid for anyway: 450 + 90 against 200 more for far with 35 left.
  expect(bestBaskets(problem, needs(5, 1))!.lines.map(({ supplier }) => supplier)).toEqual([0, 0]);
});

it('leaves out suppliers that take too long, and says when nobody has a part', () => {
  expect(bestBaskets(problem, needs(0, 1))!.lines[0]!.supplier).toBe(0);
  const without = { ...problem, parts: problem.parts.map((part) => ({ ...part, offers: part.offers.map(() => null) })) };
  expect(bestBaskets(without, needs(0, 1))).toBeNull();
});

it('sums up the same as its lines do', () => {
  for (const [a, b] of [
    [0, 0],
    [5, 0],
    [9, 2],
    [14, 1],
  ] as const) {
    const { costMinor, waitMinor, leftMinor } = bestBaskets(problem, needs(a, b))!;
    expect(basketSums(problem, needs(a, b))).toMatchObject({ costMinor, waitMinor, leftMinor });
  }
});
