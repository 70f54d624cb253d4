import { describe, expect, it } from 'vitest';
import { createAdvisor } from '../advice/index.ts';
import { benchOf, bought, moved, saw } from '../advice/testing/bench-of.ts';
import { deadProcessor, goodUnit, type Steps } from '../advice/testing/files.ts';
import { pocketModels } from '../advice/testing/pocket-model.ts';
import { pileOf } from './pile-of.ts';
import { BY_THE_WAY } from './plan-suppliers.ts';

const pileAfter = (steps: Steps) => pileOf(createAdvisor(pocketModels()).desk(benchOf(steps)));
const THREE: Steps = bought('lot', 'marsh-lane', ['u1', 'u2', 'u3']);
const SUPPLIER: Steps[number] = [
  'supplier-set',
  { supplier: 'Gull Parts', postage_minor: 350, days: 3, currency: 'GBP', offers: [{ part: 'cell-900', unit_minor: 380, least: 2 }] },
];

describe('the pile of a bench', () => {
  it('holds units under work and assemblies of the drawer, each slot with chances that sum to 1', () => {
    const { pile } = pileAfter([...THREE, ...goodUnit('u3'), moved('b3', 'board', 'u3', null)]);
    expect(pile.items.map(({ id, whole }) => [id, whole !== undefined])).toEqual([
      ['u1', true],
      ['u2', true],
      ['u3', true],
      ['b3', false],
    ]);
    for (const { assemblies } of pile.items)
      for (const { faults } of assemblies) expect(Object.values(faults).reduce((a, b) => a + b, 0)).toBeCloseTo(1, 9);
    expect(pile.items[2]!.assemblies.map(({ slot }) => slot)).toEqual(['battery', 'display', 'speaker']);
    expect(pile.items[3]!.assemblies[0]!.faults['works']).toBeGreaterThan(0.9);
  });

  it('has no unit that is gone, and none of a model that is not here', () => {
    const { pile } = pileAfter([...THREE, ['scrapped', { item_id: 'u2', reason: 'crushed' }]]);
    expect(pile.items.map(({ id }) => id)).toEqual(['u1', 'u3']);
  });

  it('believes of a slot what the evidence says', () => {
    const { pile } = pileAfter([...THREE, ...deadProcessor('u1'), saw('u2', 'display', 'cracked')]);
    const works = (item: number, slot: string) => pile.items[item]!.assemblies.find((each) => each.slot === slot)!.faults['works']!;
    expect(works(0, 'board')).toBeLessThan(0.1);
    expect(works(1, 'display')).toBeLessThan(0.2);
    expect(works(2, 'board')).toBeGreaterThan(works(0, 'board'));
  });

  it('orders what no supplier on file sells at the price of the model, and the rest as it was typed in', () => {
    const { pile } = pileAfter([...THREE, SUPPLIER]);
    expect(pile.suppliers.map(({ id, postageMinor, days }) => [id, postageMinor, days])).toEqual([
      ['Gull Parts', 350, 3],
      [BY_THE_WAY, 0, 7],
    ]);
    expect(pile.suppliers[0]!.offers).toEqual([{ part: 'cell-900', unitMinor: 380, least: 2 }]);
    expect(pile.suppliers[1]!.offers.map(({ part }) => part)).toEqual(['conv-5', 'speaker-8']);
  });

  it('learns prices, postage and days from orders', () => {
    const lines = [
      { part: 'cell-900', name: 'Cell', count: 2, price_minor: 800 },
      { part: 'conv-5', name: 'Converter', count: 1, price_minor: 200 },
    ];
    const order = { order_id: 'o1', supplier: 'Gull Parts', lines, postage_minor: 300, currency: 'GBP' };
    const { pile } = pileAfter([...THREE, ['order-placed', order]]);
    const [gull] = pile.suppliers;
    expect(gull).toMatchObject({ id: 'Gull Parts', postageMinor: 300, days: 7 });
    expect(gull!.offers).toEqual([
      { part: 'cell-900', unitMinor: 400, least: 1 },
      { part: 'conv-5', unitMinor: 200, least: 1 },
    ]);
    expect(pile.parts.find(({ id }) => id === 'cell-900')).toMatchObject({ stock: 2, keptMinor: 200 });
  });

  it('fills an empty slot with a new assembly only where a remedy puts one in', () => {
    expect(pileAfter(THREE).pile.parts.every(({ fills }) => fills.length === 0)).toBe(true);
  });

  it('keeps to what the person wants: hours, money, things left alone, choices that are possible', () => {
    const { pile, overrides } = pileAfter([
      ...THREE,
      ['plan-set', { hours_a_week: 5, weeks: 2, money_minor: 4200, risk_share: 0.5 }],
      ['plan-chosen', { item_id: 'u1', does: 'keep' }],
      ['plan-chosen', { item_id: 'u2', does: 'as-is' }],
      ['plan-chosen', { item_id: 'u3', slot: 'board', remedy: 'clean-contacts' }],
      ['plan-chosen', { item_id: 'u3', slot: 'display', remedy: 'polish' }],
    ]);
    expect(pile.limits).toEqual({ moneyMinor: 4200, minutes: 600, minutesAWeek: 300 });
    expect(pile.wishes.riskShare).toBe(0.5);
    expect(pile.items.map(({ keep }) => keep ?? false)).toEqual([true, false, false]);
    expect(overrides).toEqual([
      { item: 'u2', does: 'as-is' },
      { item: 'u3', slot: 'board', remedy: 'clean-contacts' },
    ]);
    const back = pileAfter([
      ...THREE,
      ['plan-chosen', { item_id: 'u1', does: 'keep' }],
      ['plan-chosen', { item_id: 'u1', does: 'as-planned' }],
    ]);
    expect(back.pile.items[0]!.keep).toBeUndefined();
  });
});
