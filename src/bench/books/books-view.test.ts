import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { Kind } from '../events/index.ts';
import { foldLog } from '../fold/index.ts';
import { anyLog } from '../testing/any-event.ts';
import { oneLamp, testEvent, testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { booksView, isBalanced, moneyOf } from './index.ts';

const models = smallModels();
const fold = (...steps: readonly Step[]) => foldLog(testLog(...steps), models);

const sale = [
  'sold',
  {
    item_id: 'lamp-a',
    as: 'for-parts',
    price_minor: 4000,
    postage_charged_minor: 350,
    fees_minor: 520,
    postage_minor: 410,
    currency: 'GBP',
  },
] as const;
const bulbs = ['part-bought', { bag_id: 'bag', part: 'bulb-3v', name: 'Bulb', count: 4, price_minor: 200, currency: 'GBP' }] as const;
const bulbUsed = ['part-used', { bag_id: 'bag', item_id: 'lamp-a', count: 1 }] as const;
const work = ['time-clocked', { item_id: 'lamp-a', minutes: 45, task: 'cleaning' }] as const;

test('the money of a unit says where each cost came from, and its profit once it is sold', () => {
  const before = fold(...oneLamp, bulbs, bulbUsed, work);
  expect(moneyOf(before, before.items.get('lamp-a')!)).toMatchObject({ cost_minor: 2450, income_minor: 0, profit_minor: null });
  const after = fold(...oneLamp, bulbs, bulbUsed, work, sale);
  expect(moneyOf(after, after.items.get('lamp-a')!)).toEqual({
    currency: 'GBP',
    costs: [
      { reason: 'lot', text: 'share of "a faulty lamp"', amount_minor: 2400 },
      { reason: 'part', text: '1 × Bulb', amount_minor: 50 },
    ],
    cost_minor: 2450,
    minutes: 45,
    income_minor: 4000 + 350 - 520 - 410,
    profit_minor: 970,
    profit_per_hour_minor: 1293,
  });
});

test('a refund and its postage come off the income, and a second sale adds to it', () => {
  const back = ['returned', { item_id: 'lamp-a', refund_minor: 4350, fees_back_minor: 500, postage_minor: 400 }] as const;
  const returned = fold(...oneLamp, sale, back);
  expect(moneyOf(returned, returned.items.get('lamp-a')!)).toMatchObject({ income_minor: 3420 - 4250, profit_minor: null });
  const again = fold(...oneLamp, sale, back, sale);
  expect(moneyOf(again, again.items.get('lamp-a')!)).toMatchObject({ income_minor: 2 * 3420 - 4250, profit_minor: 2 * 3420 - 4250 - 2400 });
});

test('a unit that was scrapped lost what it cost; one that was kept made nothing', () => {
  const scrapped = fold(...oneLamp, ['scrapped', { item_id: 'lamp-a', reason: 'burnt' }]);
  expect(moneyOf(scrapped, scrapped.items.get('lamp-a')!).profit_minor).toBe(-2400);
  const kept = fold(...oneLamp, ['kept', { item_id: 'lamp-a' }]);
  expect(moneyOf(kept, kept.items.get('lamp-a')!).profit_minor).toBeNull();
  expect([booksView(scrapped).stock_minor, booksView(kept).stock_minor]).toEqual([0, 0]);
});

test('months add up what was bought, sold, spent on selling, and earned', () => {
  const { months, ...books } = booksView(fold(...oneLamp, bulbs, bulbUsed, sale));
  expect(months).toEqual([
    {
      month: '2026-01',
      bought_minor: 2600,
      sold_minor: 4350,
      fees_minor: 520,
      postage_minor: 410,
      cost_of_sales_minor: 2450,
      write_off_minor: 0,
      profit_minor: 970,
      units_sold: 1,
    },
  ]);
  expect(books).toMatchObject({ stock_minor: 0, parts_minor: 150, on_order_minor: 0, cash_minor: 820, balanced: true });
});

test('what is returned in a later month counts against that month', () => {
  const log = testLog(...oneLamp, sale);
  const late = testEvent(24 * 40, 'returned', { item_id: 'lamp-a', refund_minor: 4350 });
  const { months } = booksView(foldLog([...log, { seq: 4, event: late }], models));
  expect(months.map(({ month, units_sold, profit_minor }) => [month, units_sold, profit_minor])).toEqual([
    ['2026-01', 1, 1020],
    ['2026-02', -1, -1950],
  ]);
});

test('a penny that goes astray is seen', () => {
  const state = fold(...oneLamp);
  expect(isBalanced(state)).toBe(true);
  state.items.get('lamp-a')!.costs[0]!.amountMinor += 1;
  expect(isBalanced(state)).toBe(false);
  const crooked = fold(...oneLamp);
  crooked.journal[0]!.amountMinor += 1;
  crooked.items.get('lamp-a')!.costs[0]!.amountMinor += 1;
  expect(booksView(crooked).balanced).toBe(false);
});

const MONEY: readonly Kind[] = [
  'lot-bought',
  'transplant-done',
  'part-bought',
  'part-used',
  'order-placed',
  'order-arrived',
  'sold',
  'returned',
  'kept',
  'scrapped',
  'correction',
];

test('over any history of buying, moving, using, selling, returning and undoing, profit and what is left explain the cash', () => {
  fc.assert(
    fc.property(anyLog(MONEY), (log) => {
      const state = foldLog(log, models);
      const books = booksView(state);
      expect(books.balanced).toBe(true);
      const ownUse = state.journal.reduce((sum, line) => sum + (line.account === 'own-use' ? line.amountMinor : 0), 0);
      const profit = books.months.reduce((sum, month) => sum + month.profit_minor, 0);
      expect(books.cash_minor + books.stock_minor + books.parts_minor + books.on_order_minor + ownUse).toBe(profit);
    }),
    { numRuns: 600 },
  );
});

test('profit by month and profit by unit tell the same story', () => {
  fc.assert(
    fc.property(anyLog(MONEY), (log) => {
      const state = foldLog(log, models);
      const books = booksView(state);
      const byMonth = books.months.reduce((sum, month) => sum + month.profit_minor, 0);
      const gone = new Set(['sold', 'scrapped']);
      const byUnit = books.units.reduce((sum, unit) => sum + unit.income_minor - (gone.has(unit.row.status) ? unit.cost_minor : 0), 0);
      expect(byUnit).toBe(byMonth);
    }),
    { numRuns: 400 },
  );
});
