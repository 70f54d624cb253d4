import type { Account, Item } from '../state.ts';
import type { Status } from '../views/index.ts';

/** All cost that an item carries, in the bench's currency. */
export const costOf = (item: Item): number => item.costs.reduce((sum, part) => sum + part.amountMinor, 0);

/** The accounts in which cost of items stands. */
export type HoldingAccount = Extract<Account, 'stock' | 'own-use' | 'write-off' | 'cost-of-sales'>;

/** The account in which the cost of an item stands, by where the item is in its life. */
export function accountOf(status: Status): HoldingAccount {
  if (status === 'sold') return 'cost-of-sales';
  if (status === 'scrapped') return 'write-off';
  return status === 'kept' ? 'own-use' : 'stock';
}

/** True for an item that has left for good: sold or scrapped. */
export const isGone = (item: Item): boolean => item.status === 'sold' || item.status === 'scrapped';
