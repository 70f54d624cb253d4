import { CONDITIONS, type Condition } from '../../core/market/index.ts';
import { isCurrency, parseMajor } from '../../core/quantity/index.ts';
import { csvTable, numberIn, type BadCell, type CellsOf, type CsvLine, type CsvProblem } from '../csv/csv-table.ts';

/** A line of the table of sales; `complete` and `original` may be empty. */
export interface SalesLine {
  readonly day: string;
  readonly priceMinor: number;
  readonly currency: string;
  /** Bench currency for one unit of `currency`. */
  readonly rate: number;
  readonly condition: Condition;
  readonly complete?: number | undefined;
  readonly original?: number | undefined;
  readonly text: string;
}

export const SALES_COLUMNS = ['day', 'price', 'condition', 'currency', 'rate', 'complete', 'original', 'text'] as const;
type Column = (typeof SALES_COLUMNS)[number];
const MOST_LINES = 2000;
const LONGEST_TEXT = 4000;

/**
 * Sales from the lines of a CSV text whose first line names the columns: day, price, condition, and as wanted currency, rate, complete, original, text. Every bad line is told
 * with its field; the good ones are still there. More than 2,000 sales are refused.
 */
export function salesFromCsv(
  lines: readonly CsvLine[],
  ownCurrency: string,
): { readonly sales: readonly SalesLine[]; readonly problems: readonly CsvProblem[] } {
  const { rows, problems } = csvTable(lines, { columns: SALES_COLUMNS, needed: 3, read: (cells) => salesRow(cells, ownCurrency) });
  if (rows.length <= MOST_LINES) return { sales: rows, problems };
  const message = `has ${rows.length} sales, and at most ${MOST_LINES} are taken at once`;
  return { sales: [], problems: [{ ok: false, code: 'bad-csv', line: 1, field: 'header', message, next: 'Split the table.' }] };
}

const bad = (field: Column, message: string, next: string): BadCell => ({ field, message, next });

function salesRow(cells: CellsOf<Column>, ownCurrency: string): SalesLine | BadCell {
  const cell = (column: Column): string => cells[column].trim();
  const wrong = (field: Column, wanted: string): BadCell => bad(field, `"${cell(field)}" is not ${wanted}`, 'Mend it in the table.');
  const currency = cell('currency') || ownCurrency;
  if (!/^\d{4}-\d{2}-\d{2}$/.test(cell('day')) || Number.isNaN(Date.parse(cell('day')))) return wrong('day', 'a day such as 2026-03-01');
  if (!isCurrency(currency)) return wrong('currency', 'a three-letter code such as GBP');
  const priceMinor = parseMajor(cell('price'), currency);
  if (priceMinor === undefined || priceMinor < 1) return wrong('price', `an amount above zero in ${currency}`);
  const condition = CONDITIONS.find((known) => known === cell('condition'));
  if (!condition) return wrong('condition', `one of ${CONDITIONS.join(', ')}`);
  const rate = numberIn('rate', cells.rate, 1, `how many ${ownCurrency} one ${currency} was worth`);
  if (typeof rate !== 'number') return rate;
  if (!(rate > 0)) return wrong('rate', 'above zero');
  if (currency !== ownCurrency && rate === 1) return bad('rate', 'is empty', `Say how many ${ownCurrency} one ${currency} was worth.`);
  const [complete, original] = [shareIn('complete', cells.complete), shareIn('original', cells.original)];
  if (typeof complete === 'object') return complete;
  if (typeof original === 'object') return original;
  return { day: cell('day'), priceMinor, currency, rate, condition, complete, original, text: cells.text.slice(0, LONGEST_TEXT) };
}

/** Undefined for an empty cell. */
function shareIn(field: 'complete' | 'original', cell: string): number | undefined | BadCell {
  if (cell.trim() === '') return undefined;
  const share = numberIn(field, cell, null, 'a share');
  if (typeof share !== 'number' || (share >= 0 && share <= 1)) return share;
  return bad(field, `"${cell.trim()}" is not a share from 0 to 1`, 'Write 0.5 for half.');
}
