import { describe, expect, test } from 'vitest';
import { currencyDigits, formatMinor } from '../../src/core/quantity/index.ts';
import { layersCost } from '../../src/core/books/index.ts';
import { costOf } from '../../src/bench/books/carried.ts';
import { foldLog } from '../../src/bench/fold/index.ts';
import { oneLamp, testLog } from '../../src/bench/testing/events.ts';
import { smallModels } from '../../src/bench/testing/small-model.ts';

/** Sources: SOURCE.md beside this file. Every figure comes through the log and the fold, as a person would get it. */

const models = smallModels();
const pounds = (amount: number): number => amount * 100;

const FIFO = [
  {
    source: 'exercise on periodic valuation, with key',
    lots: [
      [50, 124],
      [50, 134],
      [30, 142],
      [70, 146],
    ],
    left: 80,
    end: 11640,
    cogs: 15740,
  },
  {
    source: 'second exercise, answer page',
    lots: [
      [20, 20],
      [27, 22],
      [33, 30],
    ],
    left: 44,
    end: 1232,
    cogs: 752,
  },
] as const;

describe('parts go first in, first out', () => {
  test.each(FIFO)('$source: $left left are worth $end, what was used cost $cogs', ({ lots, left, end, cogs }) => {
    const bought = lots.map(([count, price]) => {
      const body = { bag_id: 'bag', part: 'p', name: 'Part', count, price_minor: pounds(count * price), currency: 'GBP' };
      return ['part-bought', body] as const;
    });
    const all = lots.reduce((sum, [count]) => sum + count, 0);
    const state = foldLog(testLog(...oneLamp, ...bought, ['part-used', { bag_id: 'bag', item_id: 'lamp-a', count: all - left }]), models);
    const lampAlone = foldLog(testLog(...oneLamp), models);
    const used = costOf(state.items.get('lamp-a')!) - costOf(lampAlone.items.get('lamp-a')!);
    expect({ end: layersCost(state.bags.get('bag')!.layers), cogs: used }).toEqual({ end: pounds(end), cogs: pounds(cogs) });
  });
});

const SPLITS = [
  { source: 'joint cost, first explanation', cost: 200, values: [200, 250, 350], shares: [50, 62.5, 87.5] },
  { source: 'joint cost, second explanation', cost: 100, values: [400, 100], shares: [80, 20] },
];

describe('a lot is shared by relative sales value', () => {
  test.each(SPLITS)('$source: $cost over $values is $shares', ({ cost, values, shares }) => {
    const items = values.map((value, index) => ({
      item_id: `lamp-${index}`,
      name: 'Lamp',
      model_id: 'lamp-1',
      expected_value_minor: pounds(value),
    }));
    const lot = { lot_id: 'lot', title: 't', seller: 's', price_minor: pounds(cost), currency: 'GBP', items };
    const state = foldLog(testLog(['lot-bought', lot]), models);
    expect([...state.items.values()].map(costOf)).toEqual(shares.map(pounds));
  });
});

const DIGITS = { GBP: 2, EUR: 2, USD: 2, JPY: 0, KRW: 0, BHD: 3, KWD: 3, TND: 3, CLP: 0, ISK: 0, HUF: 2 };

describe('ISO 4217: an amount of one whole unit is booked and shown with the digits of its currency', () => {
  test.each(Object.entries(DIGITS))('%s has %i', (currency, digits) => {
    expect(currencyDigits(currency)).toBe(digits);
    expect(formatMinor(10 ** digits, currency)).toBe(digits === 0 ? '1' : `1.${'0'.repeat(digits)}`);
    const bench = currency === 'GBP' ? 'EUR' : 'GBP';
    const bought = { bag_id: 'b', part: 'p', name: 'P', count: 1, price_minor: 10 ** digits, currency, rate: 3 };
    const state = foldLog(testLog(['bench-set', { currency: bench }], ['part-bought', bought]), models);
    expect(state.bags.get('b')!.layers).toEqual([{ count: 1, costMinor: 300 }]);
  });
});

/** Each as thousandths (or pennies) booked in a currency with fewer digits at rate 1: all six stand exactly on the tie. */
const HALF_EVEN = [
  { typed: '0.125', digits: 2, expected: '0.12' },
  { typed: '0.135', digits: 2, expected: '0.14' },
  { typed: '2.5', digits: 0, expected: '2' },
  { typed: '3.5', digits: 0, expected: '4' },
  { typed: '1.005', digits: 2, expected: '1.00' },
  { typed: '2.675', digits: 2, expected: '2.68' },
];

describe('IEEE 754 and ISO 80000-1: money converted on a tie goes to the even penny', () => {
  test.each(HALF_EVEN)('$typed is booked as $expected', ({ typed, digits, expected }) => {
    const [from, to] = digits === 2 ? ['KWD', 'GBP'] : ['GBP', 'JPY'];
    const price_minor = Math.round(Number(typed) * 10 ** currencyDigits(from));
    const bought = { bag_id: 'b', part: 'p', name: 'P', count: 1, price_minor, currency: from, rate: 1 };
    const state = foldLog(testLog(['bench-set', { currency: to }], ['part-bought', bought]), models);
    expect(formatMinor(layersCost(state.bags.get('b')!.layers), to)).toBe(expected);
  });
});
