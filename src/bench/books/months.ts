import type { Account, JournalLine } from '../state.ts';
import type { BooksView } from '../views/index.ts';

type Month = BooksView['months'][number];

/** Totals by calendar month (UTC) of the journal, oldest first. A return counts in the month in which it came. */
export function monthTotals(journal: readonly JournalLine[]): Month[] {
  const months = new Map<string, Month>();
  for (const lines of byEvent(journal)) {
    const month = lines[0]!.at.slice(0, 7);
    const total = months.get(month) ?? nothingIn(month);
    months.set(month, addEvent(total, lines));
  }
  return [...months.values()].sort((a, b) => (a.month < b.month ? -1 : 1));
}

/** The lines of each event; an event's lines lie together in the journal. */
function byEvent(journal: readonly JournalLine[]): JournalLine[][] {
  const groups: JournalLine[][] = [];
  for (const line of journal) {
    const last = groups.at(-1);
    if (last?.[0]?.eventId === line.eventId) last.push(line);
    else groups.push([line]);
  }
  return groups;
}

const nothingIn = (month: string): Month => ({
  month,
  bought_minor: 0,
  sold_minor: 0,
  fees_minor: 0,
  postage_minor: 0,
  cost_of_sales_minor: 0,
  write_off_minor: 0,
  profit_minor: 0,
  units_sold: 0,
});

function addEvent(total: Month, lines: readonly JournalLine[]): Month {
  const sum = (...accounts: Account[]): number =>
    lines.reduce((all, line) => all + (accounts.includes(line.account) ? line.amountMinor : 0), 0);
  const has = (account: Account): boolean => lines.some((line) => line.account === account);
  const ofSale = lines.some((line) => line.account === 'cash' && line.itemId !== null) || has('sales') || has('refunds');
  const costOfSales = sum('cost-of-sales');
  const sold = 0 - sum('sales', 'refunds');
  const costs = sum('fees', 'postage-out', 'cost-of-sales', 'write-off');
  return {
    month: total.month,
    bought_minor: total.bought_minor + (ofSale ? 0 : 0 - sum('cash')),
    sold_minor: total.sold_minor + sold,
    fees_minor: total.fees_minor + sum('fees'),
    postage_minor: total.postage_minor + sum('postage-out'),
    cost_of_sales_minor: total.cost_of_sales_minor + costOfSales,
    write_off_minor: total.write_off_minor + sum('write-off'),
    profit_minor: total.profit_minor + sold - costs,
    units_sold: total.units_sold + (has('sales') || costOfSales > 0 ? 1 : 0) - (has('refunds') || costOfSales < 0 ? 1 : 0),
  };
}
