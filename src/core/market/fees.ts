import { roundHalfEven } from '../quantity/index.ts';
import { MarketError } from './market-error.ts';

/** A person's own table of what a place takes of a price, from a day on; money in minor units. */
export interface FeeTable {
  /** Days since 1970-01-01 from which on it holds. */
  readonly fromDay: number;
  /** Shares of the price, each up to its limit; the last has no limit (null). Lower parts of a price pay the lower bands. */
  readonly bands: readonly { readonly upToMinor: number | null; readonly percent: number }[];
  readonly fixedMinor: number;
  /** The shares together are at most this; null without a cap. */
  readonly capMinor: number | null;
}

/** What a place takes of a price: bands, cap, then the fixed part; whole minor units. Throws `MarketError` on a price below zero. */
export function feeOf(table: FeeTable, priceMinor: number): number {
  if (!(priceMinor >= 0)) throw new MarketError('bad-price', `a price is not below zero, got ${priceMinor}`);
  let [from, shares] = [0, 0];
  for (const { upToMinor, percent } of table.bands) {
    const to = Math.min(priceMinor, upToMinor ?? Infinity);
    if (to > from) shares += ((to - from) * percent) / 100;
    from = Math.max(from, to);
  }
  return roundHalfEven(Math.min(shares, table.capMinor ?? Infinity)) + table.fixedMinor;
}

/** The table that holds on a day: the latest that began by then; undefined when none did. */
export const tableOn = <T extends Pick<FeeTable, 'fromDay'>>(tables: readonly T[], day: number): T | undefined =>
  tables.filter(({ fromDay }) => fromDay <= day).sort((a, b) => b.fromDay - a.fromDay)[0];
