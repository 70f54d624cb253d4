import type { BooksView } from '../../../bench/views/index.ts';
import { moneyText } from '../money.ts';
import { table } from './table.ts';

/** Each unit's money, each month's, and what is bound in what. */
export function booksLines(books: BooksView): string[] {
  const money = (minor: number | null): string => (minor === null ? '' : moneyText(minor, books.currency));
  const units = books.units.map(({ row, ...unit }) => [
    `${row.number}`,
    row.name,
    row.status,
    money(unit.cost_minor),
    money(unit.income_minor),
    money(unit.profit_minor),
    `${Math.round(unit.minutes)}`,
    money(unit.profit_per_hour_minor),
  ]);
  const months = books.months.map((month) => [
    month.month,
    money(month.bought_minor),
    money(month.sold_minor),
    money(month.fees_minor),
    money(month.postage_minor),
    money(month.cost_of_sales_minor),
    money(month.write_off_minor),
    money(month.profit_minor),
    `${month.units_sold}`,
  ]);
  return [
    ...table(['no', 'name', 'status', 'cost', 'income', 'profit', 'min', 'an hour'], units, [0, 3, 4, 5, 6, 7]),
    '',
    ...table(
      ['month', 'bought', 'sold', 'fees', 'postage', 'cost of sales', 'written off', 'profit', 'units'],
      months,
      [1, 2, 3, 4, 5, 6, 7, 8],
    ),
    '',
    `Stock ${money(books.stock_minor)}, parts ${money(books.parts_minor)}, on order ${money(books.on_order_minor)}, cash ${money(books.cash_minor)}`,
    books.balanced ? 'The ledger balances.' : 'The ledger does not balance: export the bench and report it.',
  ];
}
