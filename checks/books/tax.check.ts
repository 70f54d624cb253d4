import { describe, expect, test } from 'vitest';
import { globalMargins, marginTax } from '../../src/core/books/index.ts';

/** Sources: SOURCE.md beside this file. */

describe('the tax inside a margin at 20 % is a sixth of it, and nothing on a loss', () => {
  test.each([
    [40, 100, 10],
    [12.5, 65, 8.75],
    [20, 45.01, 4.17],
    [90, 70, 0],
  ])('bought at %d, sold at %d: %d', (bought, sold, tax) => {
    expect(marginTax(Math.round(bought * 100), Math.round(sold * 100), 20)).toBe(Math.round(tax * 100));
  });
});

test('all of a period together: 20,000 sold, 8,000 bought, margin 12,000, tax 2,000', () => {
  const [period] = globalMargins([{ salesMinor: 20_000_00, purchasesMinor: 8_000_00 }], 20);
  expect(period).toEqual({ marginMinor: 12_000_00, taxMinor: 2_000_00, carriedForwardMinor: 0 });
});
