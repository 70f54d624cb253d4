import { describe, expect, it } from 'vitest';
import { assertPlan, brokenLaws } from './assert-plan.ts';
import { comparePlans } from './compare-plans.ts';
import { overridden } from './overridden.ts';
import { planPile } from './plan-pile.ts';
import type { PilePlan } from './plan.ts';
import { faulty, remedy, twoPlayers, unit, working } from './testing/two-players.ts';
import { baseOf, donorWorths, worthOfLimits, worthOfMore } from './worth-of-more.ts';

const planOf = async (pile = twoPlayers()) => {
  const planned = await planPile(pile, { seed: 'test' });
  assertPlan(pile, planned.plan);
  return planned;
};

describe('the plan of a pile', () => {
  it('puts the good board and the good display together, and tries the bad board when a display is worth ordering', async () => {
    const { plan } = await planOf();
    expect(plan.items.map(({ item, does }) => [item, does])).toEqual([
      ['A', 'open'],
      ['B', 'open'],
    ]);
    expect(plan.items[0]!.remedies).toEqual({ board: 'reflow' });
    expect(plan.fits).toEqual([{ part: 'new display', model: 'TN-10', slot: 'display', count: 1 }]);
    expect(plan.baskets).toEqual([
      { supplier: 'near', days: 3, postageMinor: 300, lines: [{ part: 'new display', count: 1, costMinor: 2500 }], costMinor: 2800 },
    ]);
    // Two openings, reflow, fit, and 1.6 units expected.
    expect(plan.weeks).toEqual([{ week: 1, minutes: 93 }]);
  });

  it('is the same for the same pile and seed', async () => {
    expect((await planOf()).plan).toEqual((await planOf()).plan);
  });

  it('says how much less the next best brings', async () => {
    const { plan } = await planOf();
    expect(plan.items.every(({ second }) => second !== null && second.lessMinor > 0)).toBe(true);
    // Without the reflow one unit is finished all the same, and the display is not worth having.
    expect(plan.items[0]!.second!.lessMinor).toBeLessThan(plan.items[1]!.second!.lessMinor);
  });

  it('beats each unit on its own and scrapping', async () => {
    const { plan } = await planOf(twoPlayers({ suppliers: [] }));
    expect(plan.profit.meanMinor).toBeGreaterThan(plan.against.aloneMinor);
    expect(plan.against.aloneMinor).toBeGreaterThan(plan.against.scrapMinor);
    expect(plan.against.scrapMinor).toBe(2000);
  });

  it('leaves alone what the person keeps', async () => {
    const pile = twoPlayers();
    const { plan } = await planOf({ ...pile, items: pile.items.map((item) => (item.id === 'B' ? { ...item, keep: true } : item)) });
    expect(plan.items[1]).toMatchObject({ does: 'keep', remedies: {}, donorShare: 0, second: null });
  });

  it('goes for the surer way when risk is what the person minds', async () => {
    const gamble = remedy('gamble', 0.45, { minutes: 0, costMinor: 0 });
    const pile = twoPlayers({ items: [unit('A', faulty('board', gamble), working('display'))] });
    const whole = { asIsMinor: 3400, openMinutes: 0 };
    const risky = { ...pile, items: [{ ...pile.items[0]!, whole }] };
    expect((await planOf(risky)).plan.items[0]!.does).toBe('open');
    expect((await planOf({ ...risky, wishes: { ...risky.wishes, riskShare: 0.5 } })).plan.items[0]!.does).toBe('as-is');
  });

  it('keeps to work that has begun unless the change pays for the switch', async () => {
    const pile = (switchMinor: number) =>
      twoPlayers({
        items: [
          unit(
            'A',
            { ...faulty('board', remedy('reflow', 0.6), remedy('replace', 0.65)), started: { remedy: 'reflow', switchMinor } },
            working('display'),
          ),
        ],
      });
    expect((await planOf(pile(0))).plan.items[0]!.remedies).toEqual({ board: 'replace' });
    expect((await planOf(pile(900))).plan.items[0]!.remedies).toEqual({ board: 'reflow' });
  });

  it('refuses a pile whose chances or names do not fit together', async () => {
    const wrong = unit('A', { slot: 'board', faults: { works: 0.5 }, remedies: [] });
    await expect(planPile(twoPlayers({ items: [wrong] }), { seed: 'x' })).rejects.toThrow(/add up to 0.5/);
    await expect(planPile(twoPlayers({ items: [unit('A', working('antenna'))] }), { seed: 'x' })).rejects.toThrow(/slot antenna/);
  });

  it('stops when it is told to, with a plan that keeps the law', async () => {
    const pile = twoPlayers();
    const { plan } = await planPile(pile, { seed: 'test', shouldStop: () => true });
    expect(brokenLaws(pile, plan)).toEqual([]);
  });
});

describe('questions about a plan', () => {
  it('prices a working board of the drawer above what it sells for when a display waits for it', async () => {
    const pile = twoPlayers();
    const { problem, choice } = await planOf({ ...pile, suppliers: [], items: [unit('A', faulty('board'), working('display'))] });
    const worths = donorWorths(baseOf({ problem, choice }));
    expect(worths.map(({ slot }) => slot)).toEqual(['board', 'display']);
    // A finished unit less finishing and opening, less the unit as it is, plus the dead board: 8000 − 600 − 200 − 1000 + 20.
    expect(worths[0]!.worthMinor).toBeCloseTo(6220, 6);
    expect(worths[1]!.worthMinor).toBeCloseTo(400, 6);
  });

  it('says what a unit more and an hour more are worth', async () => {
    const pile = twoPlayers({ limits: { moneyMinor: 0, minutes: 55, minutesAWeek: 300 } });
    const base = baseOf(await planOf(pile));
    expect(worthOfMore(base, [unit('C', faulty('board'), faulty('display'))]).worthMinor).toBeCloseTo(1000, 6);
    expect(worthOfLimits(base, { minutes: 115, moneyMinor: 10_000 })).toBeGreaterThan(1000);
    expect(worthOfLimits(base, {})).toBeCloseTo(0, 6);
  });

  it('lets the person decide otherwise and says what it costs', async () => {
    const base = baseOf(await planOf());
    const { regretMinor, choice } = overridden(base, [{ item: 'B', does: 'as-is' }]);
    expect(choice.open[1]).toBe(0);
    expect(regretMinor).toBeGreaterThan(3000);
    expect(overridden(base, [{ item: 'A', slot: 'board', remedy: 'reflow' }]).regretMinor).toBe(0);
    expect(() => overridden(base, [{ item: 'Z', does: 'open' }])).toThrow(/no unit Z/);
  });

  it('says what changed after an event and whether it was about the item itself', async () => {
    const pile = twoPlayers();
    const before = await planOf(pile);
    const items = [unit('A', working('board'), working('display')), pile.items[1]!, unit('C', working('board'))];
    const after = await planPile({ ...pile, items }, { seed: 'test', last: before.plan });
    const changes = comparePlans(before.plan, after.plan, new Set(['A']));
    expect(changes.items.find(({ item }) => item === 'A')).toMatchObject({ why: 'itself', after: { remedies: {} } });
    expect(changes.items.find(({ item }) => item === 'C')).toMatchObject({ why: 'new', before: null });
    expect(changes.profitMinor).toBeGreaterThan(0);
  });
});

describe('the law of plans', () => {
  const broken = async (change: (plan: PilePlan) => PilePlan): Promise<string[]> => {
    const pile = twoPlayers();
    const { plan } = await planOf(pile);
    return brokenLaws(pile, change(plan));
  };

  it.each<[string, RegExp, (plan: PilePlan) => PilePlan]>([
    ['an item twice', /planned twice/, (plan) => ({ ...plan, items: [...plan.items, plan.items[0]!] })],
    ['an item left out', /in the plan/, (plan) => ({ ...plan, items: plan.items.slice(1) })],
    [
      'a remedy that is not there',
      /no remedy/,
      (plan) => ({ ...plan, items: [{ ...plan.items[0]!, remedies: { board: 'pray' } }, plan.items[1]!] }),
    ],
    ['work on what is sold', /worked on/, (plan) => ({ ...plan, items: [{ ...plan.items[0]!, does: 'as-is' as const }, plan.items[1]!] })],
    ['parts that nobody ordered', /are used/, (plan) => ({ ...plan, baskets: [] })],
    ['a sum that is wrong', /does not add up/, (plan) => ({ ...plan, baskets: [{ ...plan.baskets[0]!, costMinor: 1 }] })],
    ['money that is not there', /adds up to/, (plan) => ({ ...plan, spent: { ...plan.spent, moneyMinor: 5 } })],
    ['a week that is too full', /more work/, (plan) => ({ ...plan, weeks: [{ week: 1, minutes: 301 }] })],
  ])('finds %s', async (_, sentence, change) => {
    expect((await broken(change)).join('; ')).toMatch(sentence);
  });

  it('finds limits that are not kept', async () => {
    const { plan } = await planOf();
    expect(brokenLaws(twoPlayers({ limits: { moneyMinor: 100, minutes: 600, minutesAWeek: 300 } }), plan).join()).toMatch(/100 may be/);
    expect(brokenLaws(twoPlayers({ limits: { moneyMinor: 10_000, minutes: 20, minutesAWeek: 300 } }), plan).join()).toMatch(/20 may be/);
  });
});

it('has nothing to plan in an empty pile', async () => {
  const { plan } = await planOf(twoPlayers({ items: [] }));
  expect([plan.items, plan.profit.meanMinor, plan.boundMinor]).toEqual([[], 0, null]);
});
