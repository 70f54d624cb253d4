import { expect, test } from 'vitest';
import { BooksError, globalMargins, marginTax, smallTrader, stockBook } from './index.ts';

test('a rate that is no percentage is refused', () => {
  expect(() => marginTax(1, 2, -1)).toThrow(BooksError);
  expect(() => globalMargins([], 101)).toThrow(/0 to 100/);
});

test('more bought than sold is carried into the next period and no further than it reaches', () => {
  const periods = [
    { salesMinor: 1000, purchasesMinor: 4000 },
    { salesMinor: 2000, purchasesMinor: 500 },
    { salesMinor: 4200, purchasesMinor: 0 },
  ];
  expect(globalMargins(periods, 20)).toEqual([
    { marginMinor: -3000, taxMinor: 0, carriedForwardMinor: 3000 },
    { marginMinor: -1500, taxMinor: 0, carriedForwardMinor: 1500 },
    { marginMinor: 2700, taxMinor: 450, carriedForwardMinor: 0 },
  ]);
});

test('a small trader is measured by what comes in, and told which reckoning counts less', () => {
  expect(smallTrader(90_000, 20_000, 100_000)).toEqual({
    within: true,
    withAllowanceMinor: 0,
    withCostsMinor: 70_000,
    lower: 'allowance',
    leftMinor: 10_000,
  });
  expect(smallTrader(300_000, 250_000, 100_000)).toMatchObject({
    within: false,
    withAllowanceMinor: 200_000,
    lower: 'costs',
    leftMinor: 0,
  });
});

test('the stock book is numbered by day of purchase and has no margin for what is still there or was written off', () => {
  const thing = { purchaseInvoice: 'P1', seller: 'Ada', description: 'Tern TN-10', purchaseMinor: 1000 };
  const lines = stockBook(
    [
      { ...thing, boughtOn: '2026-03-02', left: { on: '2026-04-01', invoice: 'S1', buyer: 'Bo', saleMinor: 4000 } },
      { ...thing, boughtOn: '2026-03-01', left: { on: '2026-03-05', how: 'scrapped' } },
      { ...thing, boughtOn: '2026-03-03', left: null },
    ],
    20,
  );
  expect(lines.map(({ number, dates }) => [number, dates.purchase])).toEqual([
    [1, '2026-03-01'],
    [2, '2026-03-02'],
    [3, '2026-03-03'],
  ]);
  expect(lines.map(({ saleMinor, marginMinor, taxMinor }) => [saleMinor, marginMinor, taxMinor])).toEqual([
    ['scrapped', null, null],
    [4000, 3000, 500],
    ['', null, null],
  ]);
});
