import { formatMinor } from '../../core/quantity/index.ts';
import { booksView } from '../books/index.ts';
import { csvText, type Cell } from '../csv/csv-text.ts';
import type { BenchState } from '../state.ts';
import type { TaxView } from '../views/index.ts';
import { taxView, type Period } from './tax-view.ts';

/** Everything that an accountant may ask for of a period, as text files by name. Amounts are in major units of the bench's currency. */
export function yearPack(state: Readonly<BenchState>, period: Period): ReadonlyMap<string, string> {
  const tax = taxView(state, period);
  const amount = (minor: number | null): Cell => (minor === null ? null : formatMinor(minor, state.settings.currency));
  const inside = (at: string): boolean => at.slice(0, 10) >= period.from && at.slice(0, 10) <= period.to;
  return new Map([
    ['read-me.txt', readMe(state, tax)],
    ['stock-book.csv', stockBookCsv(tax, amount)],
    [
      'journal.csv',
      csvText(
        ['at', 'event', 'account', 'amount', 'item'],
        state.journal
          .filter(({ at }) => inside(at))
          .map(({ at, eventId, account, amountMinor, itemId }) => [at, eventId, account, amount(amountMinor), itemId]),
      ),
    ],
    ['months.csv', monthsCsv(state, period, amount)],
    ['units.csv', unitsCsv(state, amount)],
  ]);
}

type Amount = (minor: number | null) => Cell;

/** The nine fields of the stock book, its pairs of dates, invoices and names in columns of their own. */
export function stockBookCsv({ stock_book }: Pick<TaxView, 'stock_book'>, amount: Amount): string {
  const header = [
    'number',
    'bought_on',
    'sold_on',
    'purchase_invoice',
    'sale_invoice',
    'seller',
    'buyer',
    'description',
    'purchase',
    'sale',
    'margin',
    'tax',
  ];
  return csvText(
    header,
    stock_book.map((line) => [
      line.number,
      line.bought_on,
      line.sold_on,
      line.purchase_invoice,
      line.sale_invoice,
      line.seller,
      line.buyer,
      line.description,
      amount(line.purchase_minor),
      line.sale_minor === null ? line.disposal : amount(line.sale_minor),
      amount(line.margin_minor),
      amount(line.tax_minor),
    ]),
  );
}

function monthsCsv(state: Readonly<BenchState>, { from, to }: Period, amount: Amount): string {
  const months = booksView(state).months.filter(({ month }) => month >= from.slice(0, 7) && month <= to.slice(0, 7));
  return csvText(
    ['month', 'bought', 'sold', 'fees', 'postage', 'cost_of_sales', 'written_off', 'profit', 'units_sold'],
    months.map((m) => [
      m.month,
      ...[m.bought_minor, m.sold_minor, m.fees_minor, m.postage_minor, m.cost_of_sales_minor, m.write_off_minor, m.profit_minor].map(
        amount,
      ),
      m.units_sold,
    ]),
  );
}

const unitsCsv = (state: Readonly<BenchState>, amount: Amount): string =>
  csvText(
    ['number', 'name', 'status', 'cost', 'income', 'profit', 'minutes'],
    booksView(state).units.map(({ row, cost_minor, income_minor, profit_minor, minutes }) => [
      row.number,
      row.name,
      row.status,
      amount(cost_minor),
      amount(income_minor),
      amount(profit_minor),
      minutes,
    ]),
  );

const readMe = (state: Readonly<BenchState>, tax: TaxView): string =>
  [
    `Books of "${state.settings.name}" from ${tax.from} to ${tax.to}, in ${tax.currency}.`,
    `Rules in use: ${tax.rules.map(({ rule, rate_percent }) => `${rule} (${rate_percent} %)`).join(', ') || 'none'}.`,
    'stock-book.csv: things bought for resale and how they left. journal.csv: every line of the double entry; the lines of an event sum to zero.',
    'months.csv: totals by month. units.csv: each unit, whenever it was bought.',
    ...tax.why,
    '',
  ].join('\r\n');
