import Papa from 'papaparse';
import { parseMajor } from '../../../core/quantity/index.ts';
import { CONDITIONS, type Condition } from './condition-words.ts';

/** A line of the table of sales; `complete` and `original` may be empty. */
export interface SalesLine {
  readonly day: string;
  readonly priceMinor: number;
  readonly currency: string;
  readonly rate: number;
  readonly condition: Condition;
  readonly complete?: number | undefined;
  readonly original?: number | undefined;
  readonly text: string;
}

export type SalesCsv =
  { readonly ok: true; readonly lines: readonly SalesLine[] } | { readonly ok: false; readonly problems: readonly string[] };

export const SALES_COLUMNS = 'day,price,condition,currency,rate,complete,original,text';
const MOST_LINES = 2000;

/**
 * Sales from a table with a header: day, price, condition, and as wanted currency, rate, complete, original, text. All lines are read or none; each
 * problem is a sentence with its line and column.
 */
export function readSalesCsv(text: string, ownCurrency: string): SalesCsv {
  const { data, meta } = Papa.parse<Record<string, string>>(text.trim(), {
    header: true,
    skipEmptyLines: true,
    transformHeader: (name) => name.trim().toLowerCase(),
  });
  const missing = ['day', 'price', 'condition'].filter((column) => !meta.fields?.includes(column));
  if (missing.length > 0)
    return { ok: false, problems: [`Line 1 has no column "${missing.join('", "')}". Begin with the header ${SALES_COLUMNS}.`] };
  if (data.length > MOST_LINES)
    return { ok: false, problems: [`These are ${data.length} lines; at most ${MOST_LINES} are taken at once. Split the table.`] };
  const read = data.map((row, i) => readLine(row, i + 2, ownCurrency));
  const problems = read.flatMap((line) => (typeof line === 'string' ? [line] : []));
  if (problems.length > 0) return { ok: false, problems };
  return { ok: true, lines: read.filter((line) => typeof line !== 'string') };
}

function readLine(row: Readonly<Record<string, string | undefined>>, line: number, ownCurrency: string): SalesLine | string {
  const cell = (column: string): string => (row[column] ?? '').trim();
  const currency = cell('currency') || ownCurrency;
  const wrong = (column: string, wanted: string): string => `Line ${line}, ${column}: "${cell(column)}" is not ${wanted}.`;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(cell('day')) || Number.isNaN(Date.parse(cell('day')))) return wrong('day', 'a day such as 2026-03-01');
  if (!/^[A-Z]{3}$/.test(currency)) return wrong('currency', 'a three-letter code such as GBP');
  const priceMinor = parseMajor(cell('price'), currency);
  if (priceMinor === undefined || priceMinor < 1) return wrong('price', `an amount above zero in ${currency}`);
  const condition = CONDITIONS.find((known) => known === cell('condition'));
  if (!condition) return wrong('condition', `one of ${CONDITIONS.join(', ')}`);
  const rate = cell('rate') === '' ? 1 : Number(cell('rate').replace(',', '.'));
  if (!(rate > 0)) return wrong('rate', `how many ${ownCurrency} one ${currency} was worth`);
  if (currency !== ownCurrency && rate === 1) return `Line ${line}, rate: say how many ${ownCurrency} one ${currency} was worth.`;
  const shares = ['complete', 'original'].map((column) => (cell(column) === '' ? undefined : Number(cell(column).replace(',', '.'))));
  const odd = shares.findIndex((share) => share !== undefined && !(share >= 0 && share <= 1));
  if (odd >= 0) return wrong(['complete', 'original'][odd]!, 'a share from 0 to 1');
  return {
    day: cell('day'),
    priceMinor,
    currency,
    rate,
    condition,
    complete: shares[0],
    original: shares[1],
    text: cell('text'),
  };
}
