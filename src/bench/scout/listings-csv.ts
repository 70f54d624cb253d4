import { formatMinor, isCurrency, parseMajor } from '../../core/quantity/index.ts';
import { csvTable, numberIn, type BadCell, type CellsOf, type CsvLine, type CsvProblem } from '../csv/csv-table.ts';
import { csvText } from '../csv/csv-text.ts';

/** A listing as it stands in a table of several. */
export interface ListingLine {
  readonly title: string;
  readonly priceMinor: number;
  readonly postageMinor: number;
  /** Import tax and duty. */
  readonly taxMinor: number;
  readonly currency: string;
  /** Bench currency for one unit of `currency`. */
  readonly rate: number;
  readonly seller: string;
  readonly text: string;
  /** When it closes, ISO 8601 with its zone; null when it does not. */
  readonly closesAt: string | null;
  /** How many units; 1 unless given. */
  readonly count: number;
  /** Name of the model; empty when it is not said. */
  readonly modelId: string;
}

export const LISTING_COLUMNS = [
  'title',
  'price',
  'postage',
  'tax',
  'currency',
  'rate',
  'seller',
  'text',
  'closes_at',
  'count',
  'model',
] as const;
type Column = (typeof LISTING_COLUMNS)[number];
const LONGEST = { title: 200, seller: 200, text: 4000, model: 64 } as const;
const MOST_UNITS = 200;
const MOMENT = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(?::\d{2}(?:\.\d{1,3})?)?(?:Z|[+-]\d{2}:\d{2})$/;

/**
 * Listings from the lines of a CSV file whose first line names the columns: title and price, and as wanted postage, tax, currency, rate, seller, text, closes_at, count, model. Amounts are
 * written as 12 or 12.50. Every bad line is told with its field; the good ones are still there.
 */
export function listingsFromCsv(
  lines: readonly CsvLine[],
  ownCurrency: string,
): { readonly listings: readonly ListingLine[]; readonly problems: readonly CsvProblem[] } {
  const { rows, problems } = csvTable(lines, { columns: LISTING_COLUMNS, needed: 2, read: (cells) => listingRow(cells, ownCurrency) });
  return { listings: rows, problems };
}

/** The same table as text. What would begin a formula in a spreadsheet is led by an apostrophe, and so is an apostrophe, so that it comes back as it was. */
export function listingsToCsv(listings: readonly ListingLine[]): string {
  return csvText(
    LISTING_COLUMNS,
    listings.map((each) => [
      guarded(each.title),
      formatMinor(each.priceMinor, each.currency),
      formatMinor(each.postageMinor, each.currency),
      formatMinor(each.taxMinor, each.currency),
      each.currency,
      each.rate,
      guarded(each.seller),
      guarded(each.text),
      each.closesAt,
      each.count,
      guarded(each.modelId),
    ]),
  );
}

const guarded = (text: string): string => (text.startsWith("'") ? `'${text}` : text);
const unguarded = (cell: string): string => (/^'[=+\-@\t\r']/.test(cell) ? cell.slice(1) : cell);

function listingRow(cells: CellsOf<Column>, ownCurrency: string): ListingLine | BadCell {
  const words = {
    title: unguarded(cells.title).trim(),
    seller: unguarded(cells.seller).trim(),
    text: unguarded(cells.text).trim(),
    model: unguarded(cells.model).trim(),
  };
  const long = (Object.keys(LONGEST) as (keyof typeof LONGEST)[]).find((field) => words[field].length > LONGEST[field]);
  if (long) return { field: long, message: `is longer than ${LONGEST[long]} characters`, next: 'Shorten it.' };
  if (words.title === '') return { field: 'title', message: 'is empty', next: 'Write what the listing calls itself.' };
  const currency = cells.currency.trim().toUpperCase() || ownCurrency;
  if (!isCurrency(currency))
    return { field: 'currency', message: `"${cells.currency}" is not a currency`, next: 'Write a three-letter code such as GBP.' };
  const money = moneyIn(cells, currency);
  if ('message' in money) return money;
  const rate = rateIn(cells, currency, ownCurrency);
  if (typeof rate !== 'number') return rate;
  const count = numberIn('count', cells.count, 1, 'how many units');
  if (typeof count !== 'number') return count;
  if (!Number.isInteger(count) || count < 1 || count > MOST_UNITS)
    return { field: 'count', message: `is not from 1 to ${MOST_UNITS}`, next: 'Write a whole number, or leave it out for one.' };
  const closesAt = momentIn(cells.closes_at.trim());
  if (typeof closesAt === 'object' && closesAt !== null) return closesAt;
  const { title, seller, text, model } = words;
  return { title, ...money, currency, rate, seller, text, closesAt, count, modelId: model };
}

function moneyIn(cells: CellsOf<Column>, currency: string): Pick<ListingLine, 'priceMinor' | 'postageMinor' | 'taxMinor'> | BadCell {
  const amounts = { price: 0, postage: 0, tax: 0 };
  for (const field of ['price', 'postage', 'tax'] as const) {
    const text = cells[field].trim();
    const minor = text === '' && field !== 'price' ? 0 : parseMajor(text, currency);
    if (minor === undefined || minor < 0)
      return {
        field,
        message: text === '' ? 'is empty' : `"${text}" is not an amount of ${currency}`,
        next: 'Write it as 12 or 12.50, without a sign of the currency.',
      };
    amounts[field] = minor;
  }
  return { priceMinor: amounts.price, postageMinor: amounts.postage, taxMinor: amounts.tax };
}

function rateIn(cells: CellsOf<Column>, currency: string, ownCurrency: string): number | BadCell {
  const next = `Write how many ${ownCurrency} one ${currency} is worth.`;
  const text = cells.rate.trim().replace(',', '.');
  if (text === '' && currency !== ownCurrency) return { field: 'rate', message: `is missing for ${currency}`, next };
  const rate = text === '' ? 1 : Number(text);
  if (!(rate > 0) || !Number.isFinite(rate)) return { field: 'rate', message: `"${cells.rate}" is not a rate`, next };
  if (currency === ownCurrency && rate !== 1)
    return { field: 'rate', message: `is not 1 for ${currency}`, next: 'Leave it out for the currency of the bench.' };
  return rate;
}

function momentIn(text: string): string | null | BadCell {
  if (text === '') return null;
  if (MOMENT.test(text) && !Number.isNaN(Date.parse(text))) return text;
  return { field: 'closes_at', message: `"${text}" is not a time`, next: 'Write it as 2026-03-01T18:30+00:00, with its zone.' };
}
