import { accountOf, costOf } from '../books/carried.ts';
import { post } from '../books/post.ts';
import type { CostPart, Item } from '../state.ts';
import type { Fold } from './fold.ts';
import { touch } from './fold.ts';

type At = { readonly id: string; readonly at: string };

/** Moves an amount of cost from one item to another, in both their files and in the journal. */
export function passCost(fold: Fold, event: At, from: Item, to: Item, amountMinor: number): void {
  const part = (reason: CostPart['reason'], amount: number, text: string): CostPart => ({
    reason,
    amountMinor: amount,
    eventId: event.id,
    text,
  });
  from.costs.push(part('transplant-out', 0 - amountMinor, to.name));
  to.costs.push(part('transplant-in', amountMinor, from.name));
  post(fold.state, event, [
    [accountOf(from.status), -amountMinor, from.id],
    [accountOf(to.status), amountMinor, to.id],
  ]);
}

/** An assembly that sits in a unit carries nothing itself: all its cost is carried by the unit. */
export function passCostToHome(fold: Fold, event: At, assembly: Item): void {
  const home = fold.state.items.get(assembly.inside ?? '');
  const amountMinor = costOf(assembly);
  if (!home || amountMinor === 0) return;
  passCost(fold, event, assembly, home, amountMinor);
  touch(fold, home, event.at);
}

/** What an assembly inside a unit has brought into it: all that it passed on since it last got cost of its own from outside. */
export function broughtBy(assembly: Item): number {
  let brought = 0;
  for (const part of assembly.costs.toReversed()) {
    if (part.reason === 'transplant-out') brought -= part.amountMinor;
    if (part.reason === 'transplant-in' || part.reason === 'lot') break;
  }
  return brought;
}
