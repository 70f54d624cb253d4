import type { Assembly, Leftover, Pile, PileItem, Remedy } from '../pile.ts';

export const leftover = (soldMinor: number): Leftover => ({ soldMinor, keptMinor: 0, scrapMinor: 0 });

export const remedy = (id: string, chance: number, more: Partial<Remedy> = {}): Remedy => ({
  id,
  mends: { faulty: chance },
  harm: 0,
  costMinor: 100,
  minutes: 20,
  minutesSpread: 0,
  uses: {},
  gives: {},
  ...more,
});

export const working = (slot: string): Assembly => ({ slot, faults: { works: 1 }, remedies: [] });
export const faulty = (slot: string, ...remedies: Remedy[]): Assembly => ({ slot, faults: { faulty: 1 }, remedies });

export const unit = (id: string, ...assemblies: Assembly[]): PileItem => ({
  id,
  model: 'TN-10',
  assemblies,
  whole: { asIsMinor: 1000, openMinutes: 10 },
});

/** Two players of one model with a board and a display each: one has a bad board that can be mended with chance 0.6, the other a dead display. */
export function twoPlayers(more: Partial<Pile> = {}): Pile {
  return {
    models: [
      {
        id: 'TN-10',
        slots: [
          { id: 'board', works: leftover(500), failed: leftover(20) },
          { id: 'display', works: leftover(400), failed: leftover(10) },
        ],
        buildMinutes: 30,
        soldMinor: 8000,
        eachFurther: 1,
        original: { slots: [], moreMinor: 0 },
        priceSpread: 0.2,
      },
    ],
    items: [unit('A', faulty('board', remedy('reflow', 0.6)), working('display')), unit('B', working('board'), faulty('display'))],
    parts: [{ id: 'new display', stock: 0, keptMinor: 100, fills: [{ model: 'TN-10', slot: 'display', chance: 1, minutes: 5 }] }],
    suppliers: [{ id: 'near', postageMinor: 300, days: 3, offers: [{ part: 'new display', unitMinor: 2500, least: 1 }] }],
    limits: { moneyMinor: 10_000, minutes: 600, minutesAWeek: 300 },
    wishes: { hourMinor: 1200, riskShare: 0, dayMinor: 0, withinDays: 30 },
    ...more,
  };
}
