import Papa from 'papaparse';
import { describe, expect, test } from 'vitest';
import { foldLog } from '../fold/index.ts';
import { testLog, type Step } from '../testing/events.ts';
import { smallModels } from '../testing/small-model.ts';
import { taxView, yearPack } from './index.ts';

const models = smallModels();
const YEAR = { from: '2026-01-01', to: '2026-12-31' };
const fold = (...steps: readonly Step[]) => foldLog(testLog(...steps), models);

const lot: Step = [
  'lot-bought',
  {
    lot_id: 'lot-1',
    title: 'Two lamps',
    seller: '=Ada',
    price_minor: 3000,
    postage_minor: 600,
    tax_minor: 300,
    currency: 'GBP',
    items: [
      { item_id: 'a', name: 'Lamp', model_id: 'lamp-1', expected_value_minor: 2000 },
      { item_id: 'b', name: 'Lamp', model_id: 'lamp-1', expected_value_minor: 1000 },
    ],
  },
];
const sold: Step = [
  'sold',
  { item_id: 'a', as: 'for-parts', price_minor: 4000, postage_charged_minor: 400, fees_minor: 500, currency: 'GBP', buyer: 'Bo' },
];
const each: Step = ['tax-rule-set', { rule: 'margin-each', from_day: '2026-01-01', on: true, rate_percent: 20 }];

describe('the reckoning of a period', () => {
  test('has no tax and no verdict while the person has chosen no rule', () => {
    const view = taxView(fold(lot, sold), YEAR);
    expect([view.each, view.together, view.small_trader, view.rules]).toEqual([null, null, null, []]);
    expect(view.stock_book.map(({ tax_minor }) => tax_minor)).toEqual([null, null]);
  });

  test('takes as purchase what the seller got for the thing alone, without postage and import tax', () => {
    const [a, b] = taxView(fold(lot, sold, each), YEAR).stock_book;
    expect([a!.purchase_minor, b!.purchase_minor]).toEqual([2000, 1000]);
    expect(a).toMatchObject({ number: 1, seller: '=Ada', buyer: 'Bo', sale_minor: 4400, margin_minor: 2400, tax_minor: 400 });
    expect(b).toMatchObject({ number: 2, sold_on: '', sale_minor: null, margin_minor: null });
  });

  test('uses the latest setting of a rule by its day, and none that was switched off', () => {
    const off: Step = ['tax-rule-set', { rule: 'margin-each', from_day: '2026-06-01', on: false }];
    expect(taxView(fold(lot, sold, each, off), YEAR).each).toBeNull();
    expect(taxView(fold(lot, sold, each, off), { from: '2026-01-01', to: '2026-05-31' }).each).not.toBeNull();
  });

  test('pools a period month by month, dearer things left out', () => {
    const together: Step = [
      'tax-rule-set',
      { rule: 'margin-together', from_day: '2026-01-01', on: true, rate_percent: 20, item_limit_minor: 1500 },
    ];
    const view = taxView(fold(lot, sold, together), YEAR).together!;
    expect(view.left_out).toBe(1);
    expect(view.months).toHaveLength(12);
    expect(view.months.reduce((sum, { purchases_minor }) => sum + purchases_minor, 0)).toBe(1000);
    expect(view.tax_minor).toBe(0);
  });

  test('measures a small trader by what came in', () => {
    const small: Step = ['tax-rule-set', { rule: 'small-trader', from_day: '2026-01-01', on: true, allowance_minor: 100_000 }];
    const view = taxView(fold(lot, sold, small), YEAR).small_trader!;
    expect(view).toMatchObject({ income_minor: 4400, within: true, left_minor: 95_600 });
    expect(view.costs_minor).toBe(500 + 2600);
  });
});

test('the pack of a year opens in a spreadsheet without running anything, and its journal sums to zero', () => {
  const files = yearPack(fold(lot, sold, each), YEAR);
  expect([...files.keys()]).toEqual(['read-me.txt', 'stock-book.csv', 'journal.csv', 'months.csv', 'units.csv']);
  const book = Papa.parse<Record<string, string>>(files.get('stock-book.csv')!.trim(), { header: true, newline: '\r\n' }).data;
  expect(book[0]).toMatchObject({ seller: "'=Ada", purchase: '20.00', sale: '44.00', margin: '24.00', tax: '4.00' });
  const journal = Papa.parse<Record<string, string>>(files.get('journal.csv')!.trim(), { header: true, newline: '\r\n' }).data;
  expect(journal.length).toBeGreaterThan(3);
  expect(journal.reduce((sum, line) => sum + Math.round(100 * Number(line['amount'])), 0)).toBe(0);
});
