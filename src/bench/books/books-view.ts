import { accountTotals, unbalancedEvents } from '../../core/books/index.ts';
import { rowOf } from '../row-of.ts';
import type { BenchState, Item } from '../state.ts';
import type { BooksView } from '../views/index.ts';
import { costOf } from './carried.ts';
import { carriedByAccount } from './carried-by-account.ts';
import { incomeByItem, totalsOf } from './money-of.ts';
import { monthTotals } from './months.ts';

/**
 * The books: each unit's money (and that of assemblies that carry cost or were sold by themselves), totals by month,
 * what stands in the accounts. `balanced` is reckoned: every event sums to zero, and the accounts agree with the things.
 */
export function booksView(state: Readonly<BenchState>): BooksView {
  const totals = accountTotals(state.journal);
  const incomes = incomeByItem(state.journal);
  const shown = [...state.items.values()].filter((item) => item.kind === 'unit' || carriesMoney(item, incomes));
  return {
    currency: state.settings.currency,
    units: shown.sort((a, b) => a.number - b.number).map((item) => unitLine(state, item, incomes)),
    months: monthTotals(state.journal),
    stock_minor: totals.get('stock') ?? 0,
    parts_minor: totals.get('parts') ?? 0,
    on_order_minor: totals.get('on-order') ?? 0,
    cash_minor: totals.get('cash') ?? 0,
    balanced: isBalanced(state, totals),
  };
}

/** True when each event's lines sum to zero and each account of things equals what the things carry. */
export function isBalanced(state: Readonly<BenchState>, totals = accountTotals(state.journal)): boolean {
  const agrees = Object.entries(carriedByAccount(state)).every(([account, amount]) => (totals.get(account) ?? 0) === amount);
  return agrees && unbalancedEvents(state.journal).length === 0;
}

const carriesMoney = (item: Item, incomes: ReadonlyMap<string, number>): boolean =>
  item.sale !== null || costOf(item) !== 0 || incomes.has(item.id);

function unitLine(state: Readonly<BenchState>, item: Item, incomes: ReadonlyMap<string, number>): BooksView['units'][number] {
  return { row: rowOf(state, item), ...totalsOf(item, incomes.get(item.id) ?? 0) };
}
