import { describe, expect, it } from 'vitest';
import { randomStream } from '../../numeric/index.ts';
import { ceilingOf, lotStates, revealed, type CeilingWishes, type LotState } from './lot-worth.ts';
import { planPile } from './plan-pile.ts';
import { faulty, remedy, twoPlayers, unit, working } from './testing/two-players.ts';
import { baseOf } from './worth-of-more.ts';

const wishes: CeilingWishes = { lossChance: 0.2, perHourMinor: 0, errorMinor: 0, bidders: 1 };
const states: LotState[] = Array.from({ length: 9 }, (_, i) => ({
  worthMinor: 1000 * (i + 1),
  expectedMinor: 1000 * (i + 1),
  minutes: 60,
}));

describe('a ceiling price', () => {
  it('is the second smallest of nine worths for a chance of loss of one in five', () => {
    expect(ceilingOf(states, wishes, 1000, 'lot')).toMatchObject({ byLossMinor: 2000, ceilingMinor: 2000 });
    expect(ceilingOf(states, { ...wishes, lossChance: 0.05 }, 1000, 'lot').ceilingMinor).toBe(0);
  });

  it('leaves the wanted money for an hour: mean 5000, an hour that costs 1000 and shall bring 4500', () => {
    expect(ceilingOf(states, { ...wishes, lossChance: 0.9, perHourMinor: 4500 }, 1000, 'lot')).toMatchObject({
      byHourMinor: 1500,
      ceilingMinor: 1500,
    });
  });

  it('falls by the bias of the winner: a third of the error for two bidders', () => {
    const alone = ceilingOf(states, wishes, 1000, 'lot').byHourMinor;
    expect(alone - ceilingOf(states, { ...wishes, errorMinor: 600, bidders: 2 }, 1000, 'lot').byHourMinor).toBeCloseTo(200, 0);
  });

  it('draws the curve from no price on, with profit falling and the chance of loss rising', () => {
    const { curve } = ceilingOf(states, wishes, 1000, 'lot');
    expect(curve[0]).toEqual({ priceMinor: 0, profitMinor: 5000, lossChance: 0, perHourMinor: 6000 });
    expect(
      curve.every((point, i) => i === 0 || (point.profitMinor < curve[i - 1]!.profitMinor && point.lossChance >= curve[i - 1]!.lossChance)),
    ).toBe(true);
  });
});

describe('the worth of a lot', () => {
  it('is more to a pile that owns the part it lacks', async () => {
    const lot = [
      unit('lot', faulty('board', remedy('reflow', 0.6)), { slot: 'display', faults: { works: 0.3, faulty: 0.7 }, remedies: [] }),
    ];
    const worthTo = async (...items: ReturnType<typeof unit>[]): Promise<number> => {
      const base = baseOf(await planPile(twoPlayers({ items, suppliers: [] }), { seed: 'lot' }));
      const found = lotStates(base, lot, 'lot', 60);
      return found.reduce((sum, { expectedMinor }) => sum + expectedMinor, 0) / found.length;
    };
    expect(await worthTo(unit('rich', faulty('board'), working('display')))).toBeGreaterThan(
      1.5 * (await worthTo(unit('poor', faulty('board'), faulty('display')))),
    );
  });

  it('is reckoned from states in which every fault is known, drawn by their chances', () => {
    const random = randomStream('states');
    const item = unit('x', { slot: 'board', faults: { works: 0.25, faulty: 0.75 }, remedies: [] });
    const draws = Array.from({ length: 4000 }, () => Object.entries(revealed(item, random).assemblies[0]!.faults));
    expect(draws.every((faults) => faults.length === 1 && faults[0]![1] === 1)).toBe(true);
    expect(Math.abs(draws.filter(([first]) => first![0] === 'works').length / 4000 - 0.25)).toBeLessThan(0.03);
  });

  it('stops where it is told to', async () => {
    const base = baseOf(await planPile(twoPlayers(), { seed: 'stop' }));
    let asked = 0;
    expect(lotStates(base, [unit('lot', working('board'))], 'stop', 50, () => asked++ >= 3)).toHaveLength(3);
  });
});
