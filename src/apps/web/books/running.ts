import type { BooksView } from '../../../bench/views/index.ts';

type Month = Pick<BooksView['months'][number], 'month' | 'bought_minor' | 'sold_minor' | 'fees_minor' | 'postage_minor' | 'profit_minor'>;

export interface Running {
  /** Start of each month, UTC, in seconds since 1970. */
  readonly times: readonly number[];
  /** Money in hand since the start, at the end of each month, minor units. */
  readonly cashMinor: readonly number[];
  /** Profit since the start, at the end of each month, minor units. */
  readonly profitMinor: readonly number[];
}

/** Sums from the first month on, months in order of time. */
export function runningSums(months: readonly Month[]): Running {
  const ordered = months.toSorted((a, b) => a.month.localeCompare(b.month));
  let cash = 0;
  let profit = 0;
  const cashMinor: number[] = [];
  const profitMinor: number[] = [];
  for (const month of ordered) {
    cash += month.sold_minor - month.bought_minor - month.fees_minor - month.postage_minor;
    profit += month.profit_minor;
    cashMinor.push(cash);
    profitMinor.push(profit);
  }
  return { times: ordered.map((month) => Date.parse(`${month.month}-01T00:00:00Z`) / 1000), cashMinor, profitMinor };
}
