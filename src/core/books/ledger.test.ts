import { expect, test } from 'vitest';
import { assertBalanced } from './assert-balanced.ts';
import { accountTotals, unbalancedEvents } from './ledger.ts';
import { shareOfCost } from './relative-value.ts';

const line = (eventId: string, account: string, amountMinor: number) => ({ eventId, account, amountMinor });
const bought = [line('e1', 'stock', 500), line('e1', 'cash', -500)];

test('a sound journal has no unbalanced event and keeps its totals', () => {
  expect(unbalancedEvents(bought)).toEqual([]);
  expect(accountTotals(bought).get('stock')).toBe(500);
  expect(() => assertBalanced(bought, { stock: 500, parts: 0 })).not.toThrow();
});

test('a line that is off is found by its event, even when the journal as a whole sums to zero', () => {
  const crossed = [line('e1', 'stock', 1), line('e2', 'stock', -1)];
  expect(unbalancedEvents(crossed)).toEqual([
    { eventId: 'e1', sumMinor: 1 },
    { eventId: 'e2', sumMinor: -1 },
  ]);
  expect(() => assertBalanced(crossed)).toThrow(/event e1 sum to 1/);
});

test('an account that differs from what its things carry is named', () => {
  expect(() => assertBalanced(bought, { stock: 499 })).toThrow(/stock stands at 500, but its things carry 499/);
});

test('a share of cost is clamped to the whole', () => {
  expect([shareOfCost(100, 0.335), shareOfCost(100, -1), shareOfCost(100, 7)]).toEqual([34, 0, 100]);
});
