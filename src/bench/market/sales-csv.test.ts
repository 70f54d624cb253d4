import { describe, expect, it } from 'vitest';
import Papa from 'papaparse';
import { csvLines } from '../csv/csv-lines.ts';
import { salesFromCsv } from './sales-csv.ts';

const read = (text: string) =>
  salesFromCsv(
    csvLines(text, (plain, options) => void Papa.parse<string[]>(plain, options)),
    'GBP',
  );

describe('a table of sales', () => {
  it('is read with what it says and what is usual where it says nothing', () => {
    const text = 'Day;Price;Condition;original\n2026-03-01;68,50;B;0,5\n2026-03-02;40;parts;';
    expect(read(text)).toEqual({
      problems: [],
      sales: [
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
    ['without a column that is needed', 'day,price\n2026-01-01,5', '1 header: has no column "condition"'],
    ['with a day that is none', 'day,price,condition\n2026-13-01,5,B', '2 day: "2026-13-01" is not a day'],
    ['with a price of nothing', 'day,price,condition\n2026-01-01,0,B', '2 price: "0" is not an amount above zero'],
    [
      'with a grade that is not on the scale',
      'day,price,condition\n2026-01-01,5,B\n2026-01-01,5,mint',
      '3 condition: "mint" is not one of A',
    ],
    ['in foreign money without a rate', 'day,price,condition,currency\n2026-01-01,5,B,EUR', '2 rate: is empty'],
    ['with a rate below zero', 'day,price,condition,rate\n2026-01-01,5,B,-2', '2 rate: "-2" is not above zero'],
    ['with a share above one', 'day,price,condition,complete\n2026-01-01,5,B,7', '2 complete: "7" is not a share'],
    ['of more lines than are taken at once', `day,price,condition${'\n2026-01-01,5,B'.repeat(2001)}`, '1 header: has 2001 sales'],
  ])('%s is refused with the line and the column', (_what, text, words) => {
    const { problems } = read(text);
    expect(problems.map(({ line, field, message }) => `${line} ${field}: ${message}`).join(' ')).toContain(words);
  });
});
