import type { Account, BenchState } from '../state.ts';

/** Account, amount (debit positive), and the item concerned. */
export type Posting = readonly [account: Account, amountMinor: number, itemId?: string | null];

/** Adds the lines of one event to the journal; lines of nothing are left out. */
export function post(state: BenchState, event: { readonly id: string; readonly at: string }, postings: readonly Posting[]): void {
  for (const [account, amountMinor, itemId] of postings) {
    if (amountMinor === 0) continue;
    state.journal.push({ eventId: event.id, at: event.at, account, amountMinor, itemId: itemId ?? null });
  }
}
