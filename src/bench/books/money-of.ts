import { roundHalfEven } from '../../core/quantity/index.ts';
import type { BenchState, Item, JournalLine } from '../state.ts';
import type { MoneyView } from '../views/index.ts';
import { costOf, isGone } from './carried.ts';

/** Accounts whose lines make the income of an item: a credit (negative) is money in. */
const INCOME: ReadonlySet<string> = new Set(['sales', 'refunds', 'fees', 'postage-out']);

/** Price and postage charged, less fees, postage and refunds, by item, over all its sales. */
export function incomeByItem(journal: readonly JournalLine[]): ReadonlyMap<string, number> {
  const income = new Map<string, number>();
  for (const { account, itemId, amountMinor } of journal) {
    if (itemId !== null && INCOME.has(account)) income.set(itemId, (income.get(itemId) ?? 0) - amountMinor);
  }
  return income;
}

/** What an item cost and where each cost came from, what it brought, and once it has left the profit and the profit per hour. */
export const moneyOf = (state: Readonly<BenchState>, item: Item): MoneyView => ({
  currency: state.settings.currency,
  costs: item.costs.map((part) => ({ reason: part.reason, text: part.text, amount_minor: part.amountMinor })),
  ...totalsOf(item, incomeByItem(state.journal).get(item.id) ?? 0),
});

/** The same without where each cost came from, for an item of that income. */
export function totalsOf(item: Item, income: number): Omit<MoneyView, 'currency' | 'costs'> {
  const cost = costOf(item);
  const profit = isGone(item) ? income - cost : null;
  return {
    cost_minor: cost,
    minutes: item.minutes,
    income_minor: income,
    profit_minor: profit,
    profit_per_hour_minor: profit === null || item.minutes === 0 ? null : roundHalfEven((profit * 60) / item.minutes),
  };
}
