import { describe, expect, it } from 'vitest';
import { readSalesCsv } from './sales-csv.ts';

describe('a table of sales', () => {
  it('is read with what it says and what is usual where it says nothing', () => {
    const text = 'Day;Price;Condition;original\n2026-03-01;68,50;B;0,5\n2026-03-02;40;parts;';
    expect(readSalesCsv(text, 'GBP')).toEqual({
      ok: true,
      lines: [
        { day: '2026-03-01', priceMinor: 6850, currency: 'GBP', rate: 1, condition: 'B', complete: undefined, original: 0.5, text: '' },
        {
          day: '2026-03-02',
          priceMinor: 4000,
          currency: 'GBP',
          rate: 1,
          condition: 'parts',
          complete: undefined,
          original: undefined,
          text: '',
        },
      ],
    });
  });

  it.each([
    ['without a column that is needed', 'day,price\n2026-01-01,5', /Line 1 has no column "condition"/],
    ['with a day that is none', 'day,price,condition\n2026-13-01,5,B', /Line 2, day: "2026-13-01"/],
    ['with a price of nothing', 'day,price,condition\n2026-01-01,0,B', /Line 2, price/],
    [
      'with a grade that is not on the scale',
      'day,price,condition\n2026-01-01,5,B\n2026-01-01,5,mint',
      /Line 3, condition: "mint" is not one of A, B, C, D, parts/,
    ],
    ['in foreign money without a rate', 'day,price,condition,currency\n2026-01-01,5,B,EUR', /Line 2, rate: say how many GBP one EUR/],
    ['with a share above one', 'day,price,condition,complete\n2026-01-01,5,B,7', /Line 2, complete: "7"/],
  ])('%s is refused whole, with the line and the column', (_what, text, sentence) => {
    const read = readSalesCsv(text, 'GBP');
    expect(read.ok).toBe(false);
    expect(read.ok ? '' : read.problems.join(' ')).toMatch(sentence);
  });
});
