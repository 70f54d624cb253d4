import { describe, expect, it } from 'vitest';
import { assertPlan, baseOf, overridden, planPile, type Pile, type Remedy } from '../../src/core/planning/index.ts';

const left = (soldMinor: number) => ({ soldMinor, keptMinor: 0, scrapMinor: 0 });
const work = (id: string, more: Partial<Remedy>): Remedy => ({
  id,
  mends: {},
  harm: 0,
  costMinor: 0,
  minutes: 20,
  minutesSpread: 0,
  uses: {},
  gives: {},
  ...more,
});

/** A player paid about 32 whose board has liquid damage, a missing chip and bridged pins, and a spare board for 5 that lacks a connector of 2. */
function playerAndSpareBoard({ connector = 0.95, chip = 0.35 }): Pile {
  return {
    models: [
      {
        id: 'Tern TN-20',
        slots: [
          { id: 'board', works: left(900), failed: left(50) },
          { id: 'everything else', works: left(1500), failed: left(0) },
        ],
        buildMinutes: 40,
        soldMinor: 10_500,
        eachFurther: 1,
        original: { slots: [], moreMinor: 0 },
        priceSpread: 0.1,
      },
    ],
    items: [
      {
        id: 'the player',
        model: 'Tern TN-20',
        whole: { asIsMinor: 3200, openMinutes: 10 },
        assemblies: [
          {
            slot: 'board',
            faults: { 'liquid, no chip, bridged pins': 1 },
            remedies: [
              work('fit the chip and clear the bridges', {
                mends: { 'liquid, no chip, bridged pins': chip },
                harm: 0.1,
                minutes: 120,
                uses: { 'chip off a board': 1 },
              }),
              work('take the connector off', { harm: 1, gives: { 'connector off a board': 1 } }),
            ],
          },
          { slot: 'everything else', faults: { works: 1 }, remedies: [] },
        ],
      },
      {
        id: 'the spare board',
        model: 'Tern TN-20',
        assemblies: [
          {
            slot: 'board',
            faults: { 'no connector': 1 },
            remedies: [
              work('fit a new connector', { mends: { 'no connector': connector }, harm: 0.02, uses: { connector: 1 } }),
              work('fit the old connector', {
                mends: { 'no connector': connector * 0.9 },
                harm: 0.02,
                uses: { 'connector off a board': 1 },
              }),
              work('take the chip off', { harm: 1, minutes: 40, gives: { 'chip off a board': 1 } }),
            ],
          },
        ],
      },
    ],
    parts: ['connector', 'connector off a board', 'chip off a board'].map((id) => ({ id, stock: 0, keptMinor: 0, fills: [] })),
    suppliers: [{ id: 'near', postageMinor: 0, days: 2, offers: [{ part: 'connector', unitMinor: 200, least: 1 }] }],
    limits: { moneyMinor: 5000, minutes: 600, minutesAWeek: 600 },
    wishes: { hourMinor: 1000, riskShare: 0, dayMinor: 0, withinDays: 30 },
  };
}

const remediesIn = async (pile: Pile) => {
  const planned = await planPile(pile, { seed: 'whole assembly' });
  assertPlan(pile, planned.plan);
  return { planned, remedies: Object.fromEntries(planned.plan.items.map((item) => [item.item, item.remedies])) };
};

describe('a working assembly is not taken apart for a doubtful one (common practice, no source)', () => {
  it('fits the connector of 2 to the spare board of 5 and moves it whole; the liquid-damaged board becomes the donor', async () => {
    const { planned, remedies } = await remediesIn(playerAndSpareBoard({}));
    expect(remedies).toEqual({ 'the player': {}, 'the spare board': { board: 'fit a new connector' } });
    expect(planned.plan.baskets.flatMap(({ lines }) => lines)).toEqual([{ part: 'connector', count: 1, costMinor: 200 }]);
    expect(planned.plan.items[0]!.does).toBe('open');
    // Paid 32 and 5; 95 % · 98 % of a restored unit for above 100.
    expect(planned.plan.profit.meanMinor - 3200 - 500).toBeGreaterThan(3500);
  });

  it('says what it would cost to take the chip off the spare board instead', async () => {
    const { planned } = await remediesIn(playerAndSpareBoard({}));
    const { regretMinor } = overridden(baseOf(planned), [
      { item: 'the spare board', slot: 'board', remedy: 'take the chip off' },
      { item: 'the player', slot: 'board', remedy: 'fit the chip and clear the bridges' },
    ]);
    expect(regretMinor).toBeGreaterThan(4000);
  });

  it('holds even if fitting the chip were as sure as the connector, as it takes longer and spends a board', async () => {
    const { remedies } = await remediesIn(playerAndSpareBoard({ chip: 0.95 }));
    expect(remedies['the spare board']).toEqual({ board: 'fit a new connector' });
  });

  it('follows from the figures: a spare board that can hardly be mended does give its chip to a board that likely can', async () => {
    const { remedies } = await remediesIn(playerAndSpareBoard({ connector: 0.1, chip: 0.9 }));
    expect(remedies).toEqual({
      'the player': { board: 'fit the chip and clear the bridges' },
      'the spare board': { board: 'take the chip off' },
    });
  });
});
