import { afterAll, describe, expect, it } from 'vitest';
import {
  LinearProgramBuilder,
  assertPlan,
  planPile,
  winnersBias,
  winnersError,
  type LinearProgram,
  type Pile,
} from '../../src/core/planning/index.ts';
import { openLinearSolver } from '../../src/edges/solver/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';

const solver = openLinearSolver();
afterAll(() => solver.close());

async function optimum(program: LinearProgram): Promise<{ objective: number; x: number[] }> {
  const answer = await solver.solve(program);
  if (!answer.ok) throw new Error(`${answer.code}: ${answer.detail}`);
  return { objective: answer.objective, x: [...answer.x] };
}

/** max p · x, R x ≤ b, x of 0 and 1. */
function knapsacks(p: readonly number[], rows: readonly (readonly number[])[], b: readonly number[]): LinearProgram {
  const lp = new LinearProgramBuilder();
  for (const worth of p) lp.column(worth, 0, 1, true);
  rows.forEach((row, i) =>
    lp.row(
      -Infinity,
      b[i]!,
      row.map((weight, column) => [column, weight] as const),
    ),
  );
  return lp.build();
}

describe('the solver against published optima', () => {
  it('solves the first two multi-dimensional knapsacks of the OR-Library: 3800 and 8706.1', async () => {
    const first = knapsacks(
      [100, 600, 1200, 2400, 500, 2000],
      [
        [8, 12, 13, 64, 22, 41],
        [8, 12, 13, 75, 22, 41],
        [3, 6, 4, 18, 6, 4],
        [5, 10, 8, 32, 6, 12],
        [5, 13, 8, 42, 6, 20],
        [5, 13, 8, 48, 6, 20],
        [0, 0, 0, 0, 8, 0],
        [3, 0, 4, 0, 8, 0],
        [3, 2, 4, 0, 8, 4],
        [3, 2, 4, 8, 8, 4],
      ],
      [80, 96, 20, 36, 44, 48, 10, 18, 22, 24],
    );
    const { objective, x } = await optimum(first);
    expect(objective).toBeCloseTo(3800, 6);
    expect(x.map(Math.round)).toEqual([0, 1, 1, 0, 0, 1]);
    const second = knapsacks(
      [600.1, 310.5, 1800, 3850, 18.6, 198.7, 882, 4200, 402.5, 327],
      [
        [20, 5, 100, 200, 2, 4, 60, 150, 80, 40],
        [20, 7, 130, 280, 2, 8, 110, 210, 100, 40],
        [60, 3, 50, 100, 4, 2, 20, 40, 6, 12],
        [60, 8, 70, 200, 4, 6, 40, 70, 16, 20],
        [60, 13, 70, 250, 4, 10, 60, 90, 20, 24],
        [60, 13, 70, 280, 4, 10, 70, 105, 22, 28],
        [5, 2, 20, 100, 2, 5, 10, 60, 0, 0],
        [45, 14, 80, 180, 6, 10, 40, 100, 20, 0],
        [55, 14, 80, 200, 6, 10, 50, 140, 30, 40],
        [65, 14, 80, 220, 6, 10, 50, 180, 30, 50],
      ],
      [450, 540, 200, 360, 440, 480, 200, 360, 440, 480],
    );
    expect((await optimum(second)).objective).toBeCloseTo(8706.1, 6);
  });

  it.each([
    {
      costs: [
        [400, 150, 400],
        [400, 450, 600],
        [300, 225, 300],
      ],
      least: 850,
    },
    {
      costs: [
        [400, 150, 400, 1],
        [400, 450, 600, 2],
        [300, 225, 300, 3],
      ],
      least: 452,
    },
    {
      costs: [
        [10, 10, 8],
        [9, 8, 1],
        [9, 7, 4],
      ],
      least: 18,
    },
  ])('finds an assignment of $least by the relaxation alone, in whole numbers', async ({ costs, least }) => {
    const lp = new LinearProgramBuilder();
    const columns = costs.map((row) => row.map((cost) => lp.column(-cost, 0, 1)));
    for (const row of columns)
      lp.row(
        1,
        1,
        row.map((column) => [column, 1] as const),
      );
    columns[0]!.forEach((_, j) =>
      lp.row(
        -Infinity,
        1,
        columns.map((row) => [row[j]!, 1] as const),
      ),
    );
    const { objective, x } = await optimum(lp.build());
    expect(-objective).toBeCloseTo(least, 6);
    for (const value of x) expect(Math.abs(value - Math.round(value))).toBeLessThan(1e-7);
  });
});

/** Wheat, corn, beets: yields in tonnes an acre, 20 % up or down with the weather. */
const YIELDS = [2.5, 3, 20] as const;

/** The farmer's problem with these yields, each as likely, acres decided before the weather; `acres` fixes them. */
function farmer(factors: readonly number[], acres?: readonly number[]): LinearProgram {
  const lp = new LinearProgramBuilder();
  const land = [150, 230, 260].map((cost, i) => lp.column(-cost, acres?.[i] ?? 0, acres?.[i] ?? Infinity));
  lp.row(
    -Infinity,
    500,
    land.map((column) => [column, 1] as const),
  );
  const share = 1 / factors.length;
  for (const factor of factors) {
    [
      { needed: 200, sold: 170, bought: 238 },
      { needed: 240, sold: 150, bought: 210 },
    ].forEach(({ needed, sold, bought }, i) => {
      const [out, more] = [lp.column(sold * share, 0, Infinity), lp.column(-bought * share, 0, Infinity)];
      lp.row(needed, Infinity, [
        [land[i]!, YIELDS[i]! * factor],
        [more, 1],
        [out, -1],
      ]);
    });
    const [quota, beyond] = [lp.column(36 * share, 0, 6000), lp.column(10 * share, 0, Infinity)];
    lp.row(-Infinity, 0, [
      [quota, 1],
      [beyond, 1],
      [land[2]!, -YIELDS[2] * factor],
    ]);
  }
  return lp.build();
}

describe('a two-stage program', () => {
  it('has the published values of the farmer: 108,390 for the plan, 115,406 with the weather known, 107,240 for the mean plan', async () => {
    const plan = await optimum(farmer([0.8, 1, 1.2]));
    expect(plan.objective).toBeCloseTo(108_390, 0);
    expect(plan.x.slice(0, 3).map(Math.round)).toEqual([170, 80, 250]);
    const known = await Promise.all([0.8, 1, 1.2].map(async (factor) => (await optimum(farmer([factor]))).objective));
    const waitAndSee = known.reduce((a, b) => a + b, 0) / 3;
    expect(Math.round(waitAndSee)).toBe(115_406);
    expect(Math.round(waitAndSee - plan.objective)).toBe(7_016);
    const mean = await optimum(farmer([1]));
    const meanPlan = await optimum(farmer([0.8, 1, 1.2], mean.x.slice(0, 3)));
    expect(plan.objective - meanPlan.objective).toBeCloseTo(1_150, 0);
  });
});

/** Units that surely pay so much and cost so much to mend, and nothing else. */
function knapsackPile(weights: readonly number[], worths: readonly number[], capacity: number): Pile {
  return {
    models: worths.map((soldMinor, i) => ({
      id: `kind ${i}`,
      slots: [{ id: 'board', works: nothing, failed: nothing }],
      buildMinutes: 0,
      // What mending costs is paid out of what it brings, so it is added here to leave the published worth.
      soldMinor: soldMinor + weights[i]!,
      eachFurther: 1,
      original: { slots: [], moreMinor: 0 },
      priceSpread: 0,
    })),
    items: weights.map((costMinor, i) => ({
      id: `unit ${i}`,
      model: `kind ${i}`,
      whole: { asIsMinor: 0, openMinutes: 0 },
      assemblies: [
        {
          slot: 'board',
          faults: { dead: 1 },
          remedies: [{ id: 'mend', mends: { dead: 1 }, harm: 0, costMinor, minutes: 0, minutesSpread: 0, uses: {}, gives: {} }],
        },
      ],
    })),
    parts: [],
    suppliers: [],
    limits: { moneyMinor: capacity, minutes: 1000, minutesAWeek: 1000 },
    wishes: { hourMinor: 0, riskShare: 0, dayMinor: 0, withinDays: 0 },
  };
}
const nothing = { soldMinor: 0, keptMinor: 0, scrapMinor: 0 };

it('plans a pile that is the knapsack p01 to its optimum of 309, within the money', async () => {
  const weights = [23, 31, 29, 44, 53, 38, 63, 85, 89, 82];
  const pile = knapsackPile(weights, [92, 57, 49, 68, 60, 43, 67, 84, 87, 72], 165);
  const { plan } = await planPile(pile, { seed: 'p01', solve: solver.solve });
  assertPlan(pile, plan);
  expect(plan.profit.meanMinor).toBeCloseTo(309, 9);
  expect(plan.items.map(({ remedies }) => ('board' in remedies ? 1 : 0))).toEqual([1, 1, 1, 1, 0, 1, 0, 0, 0, 0]);
  expect(plan.boundMinor!).toBeGreaterThanOrEqual(309 - 1e-6);
});

describe("the winner's curse", () => {
  it('is a third, a half, two thirds and nine elevenths of the error for 2, 3, 5 and 10 bidders', () => {
    for (const [bidders, bias] of [
      [2, 0.333333],
      [3, 0.5],
      [5, 0.666667],
      [10, 0.818182],
    ] as const) {
      expect(winnersBias(1, bidders)).toBeCloseTo(bias, 6);
      const errors = Array.from({ length: 4000 }, (_, i) => winnersError(1, bidders, (i + 0.5) / 4000));
      expect(errors.reduce((a, b) => a + b, 0) / errors.length).toBeCloseTo(bias, 3);
    }
  });

  it('makes every bid lose against a seller who knows the worth, when the buyer gains half as much again', () => {
    // Samuelson & Bazerman (1985): value even on 0 to 100, sold only when the bid reaches it: b/100 · (1.5 · b/2 − b).
    const random = randomStream('informed seller');
    const draws = Array.from({ length: 200_000 }, () => 100 * random());
    const profit = (bid: number): number => draws.reduce((sum, value) => sum + (value <= bid ? 1.5 * value - bid : 0), 0) / draws.length;
    for (const [bid, expected] of [
      [20, -1],
      [60, -9],
      [100, -25],
    ] as const)
      expect(Math.abs(profit(bid) - expected)).toBeLessThan(0.15);
  });
});
