import fc from 'fast-check';
import Papa from 'papaparse';
import { describe, expect, it } from 'vitest';
import type { CsvLine } from '../csv/csv-table.ts';
import { listingsFromCsv, listingsToCsv, type ListingLine } from './index.ts';

const linesOf = (text: string): CsvLine[] =>
  Papa.parse<string[]>(text, { delimiter: ',', newline: text.includes('\r\n') ? '\r\n' : '\n' }).data.map((cells, i) => ({
    line: i + 1,
    cells,
  }));
const read = (text: string) => listingsFromCsv(linesOf(text), 'GBP');

const words = fc.string({ maxLength: 30 }).map((text) => text.trim());
const formula = fc.tuple(fc.constantFrom('=', '+', '-', '@', "'", "'=", '"'), words).map(([sign, text]) => `${sign}${text}`.trim());
const text = fc.oneof(words, formula, fc.constant('two\nlines, and "quotes"'));
const listing: fc.Arbitrary<ListingLine> = fc.record({
  title: text.filter((title) => title !== ''),
  priceMinor: fc.nat(1_000_000),
  postageMinor: fc.nat(10_000),
  taxMinor: fc.nat(10_000),
  currency: fc.constantFrom('USD', 'JPY', 'KWD'),
  rate: fc.double({ min: 0.0001, max: 1000, noNaN: true }),
  seller: text,
  text,
  closesAt: fc.constantFrom(null, '2026-03-01T18:30+00:00', '2026-03-01T18:30:00Z'),
  count: fc.integer({ min: 1, max: 200 }),
  modelId: fc.constantFrom('', 'tern-tn10'),
});

describe('a table of listings', () => {
  it('comes back as it was written', () => {
    fc.assert(
      fc.property(fc.array(listing, { maxLength: 5 }), (listings) => {
        expect(read(listingsToCsv(listings))).toEqual({ listings, problems: [] });
      }),
    );
  });

  it('holds no cell with which a spreadsheet would begin a formula', () => {
    fc.assert(
      fc.property(fc.array(listing, { minLength: 1, maxLength: 5 }), (listings) => {
        for (const { cells } of linesOf(listingsToCsv(listings)))
          for (const cell of cells) if (!/^-?\d+(\.\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[=+\-@\t\r]/);
      }),
    );
  });

  it('needs no more than title and price, in any order', () => {
    expect(read('price,title\n12.50,Tern with a cracked shell').listings).toEqual([
      {
        title: 'Tern with a cracked shell',
        priceMinor: 1250,
        postageMinor: 0,
        taxMinor: 0,
        currency: 'GBP',
        rate: 1,
        seller: '',
        text: '',
        closesAt: null,
        count: 1,
        modelId: '',
      },
    ]);
  });

  it.each([
    ['title\nTern', 1, 'header', /no column "price"/],
    ['title,price,colour\nTern,1,grey', 1, 'header', /"colour" that is not known/],
    ['title,price\nTern,12.555', 2, 'price', /"12.555" is not an amount of GBP/],
    ['title,price\nTern,-1', 2, 'price', /not an amount/],
    ['title,price\n,1', 2, 'title', /is empty/],
    ['title,price\nTern,1,2', 2, 'price', /has 3 cells/],
    ['title,price,currency\nTern,1,USD', 2, 'rate', /missing for USD/],
    ['title,price,currency,rate\nTern,1,pounds,1', 2, 'currency', /not a currency/],
    ['title,price,closes_at\nTern,1,tomorrow', 2, 'closes_at', /not a time/],
    ['title,price,count\nTern,1,0', 2, 'count', /not from 1/],
    ['title,price,rate\nTern,1,2', 2, 'rate', /not 1 for GBP/],
  ])('%j is refused at line %i, %s', (table, line, field, message) => {
    const { problems } = read(table);
    const [problem] = problems;
    expect(problems).toHaveLength(1);
    expect(problem!.line).toBe(line);
    expect(problem!.field).toBe(field);
    expect(problem!.message).toMatch(message);
    expect(problem!.next).toMatch(/\.$/);
  });

  it('keeps the good lines beside the bad ones', () => {
    const { listings, problems } = read('title,price\nTern,1\nCorrie,one\nTern again,2');
    expect(listings.map(({ title }) => title)).toEqual(['Tern', 'Tern again']);
    expect(problems.map(({ line }) => line)).toEqual([3]);
  });
});
