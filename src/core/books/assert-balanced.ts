import { BooksError } from './books-error.ts';
import { accountTotals, unbalancedEvents, type LedgerLine } from './ledger.ts';

/** What must stand in an account, counted another way than by the journal. */
export type CarriedCosts = Readonly<Record<string, number>>;

/**
 * The law of the books, for tests: the lines of each event sum to zero, and each named account equals what the things
 * in it carry. Throws `BooksError` with what is off and by how much.
 */
export function assertBalanced(lines: readonly LedgerLine[], carried: CarriedCosts = {}): void {
  const [first] = unbalancedEvents(lines);
  if (first) throw new BooksError('unbalanced', `the lines of event ${first.eventId} sum to ${first.sumMinor}, not to 0`);
  const totals = accountTotals(lines);
  for (const [account, expected] of Object.entries(carried)) {
    const actual = totals.get(account) ?? 0;
    if (actual !== expected) throw new BooksError('cost-lost', `account ${account} stands at ${actual}, but its things carry ${expected}`);
  }
}
