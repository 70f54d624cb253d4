import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { lowStock, type PartWant } from './low-stock.ts';

const bought = (part: string, count: number): Step => [
  'part-bought',
  { bag_id: `bag-${part}-${count}`, part, name: part, count, price_minor: 100, currency: 'GBP' },
];
const ordered = (part: string, count: number): Step => [
  'order-placed',
  { order_id: `o-${part}`, supplier: 's', lines: [{ part, name: part, count, price_minor: 5 }], currency: 'GBP' },
];
const want = (part: string, count: number, chance = 1, item = '#1 Lamp'): PartWant => ({ part, name: part, count, chance, for: item });
const short = (wants: readonly PartWant[], ...steps: readonly Step[]) => lowStock(wants, foldLog(testLog(...steps), smallModels()));

describe('what the drawer lacks for a plan', () => {
  test('is nothing while bags hold what it may take, over all bags of a part', () => {
    expect(short([want('bulb', 5)], bought('bulb', 2), bought('bulb', 3))).toEqual([]);
    expect(short([], bought('bulb', 2))).toEqual([]);
  });

  test('is told with what it is for, what is here and what is coming', () => {
    const wants = [want('bulb', 2), want('bulb', 2, 0.25, '#2 Lamp'), want('bulb', 1, 0.5)];
    expect(short(wants, bought('bulb', 1), ordered('bulb', 3))).toEqual([
      { part: 'bulb', name: 'bulb', wanted: 5, expected: 3, atHand: 1, onItsWay: 3, short: 1, for: ['#1 Lamp', '#2 Lamp'] },
    ]);
  });

  test('counts of an order only what may still come', () => {
    const came: Step = ['order-arrived', { order_id: 'o-bulb', counts: [1] }];
    expect(short([want('bulb', 9)], ordered('bulb', 3), came)).toMatchObject([{ atHand: 1, onItsWay: 2, short: 6 }]);
    expect(short([want('bulb', 9)], ordered('bulb', 3), came, ['order-cancelled', { order_id: 'o-bulb' }])).toMatchObject([
      { atHand: 1, onItsWay: 0, short: 8 },
    ]);
  });

  test('has first what is most surely missed', () => {
    const wants = [want('wire', 9, 0.1), want('bulb', 2)];
    expect(short(wants).map(({ part }) => part)).toEqual(['bulb', 'wire']);
  });
});
