/** One line of a double-entry journal: debit positive, credit negative. */
export interface LedgerLine {
  readonly eventId: string;
  readonly account: string;
  readonly amountMinor: number;
}

/** The events whose lines do not sum to zero, each with its sum. Empty for a sound journal. */
export function unbalancedEvents(lines: readonly LedgerLine[]): { readonly eventId: string; readonly sumMinor: number }[] {
  const sums = new Map<string, number>();
  for (const line of lines) sums.set(line.eventId, (sums.get(line.eventId) ?? 0) + line.amountMinor);
  const unbalanced = [];
  for (const [eventId, sumMinor] of sums) if (sumMinor !== 0) unbalanced.push({ eventId, sumMinor });
  return unbalanced;
}

/** The balance of each account that has lines. */
export function accountTotals(lines: readonly LedgerLine[]): ReadonlyMap<string, number> {
  const totals = new Map<string, number>();
  for (const line of lines) totals.set(line.account, (totals.get(line.account) ?? 0) + line.amountMinor);
  return totals;
}
