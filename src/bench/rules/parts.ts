import { itemAtHand } from './known.ts';
import { moneySound } from './money.ts';
import { nearest } from './nearest.ts';
import { orderKnown } from './orders.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

export const partBought: Rule<'part-bought'> = (context, { body }) =>
  firstOf(
    () => bagHoldsPart(context, body.bag_id, body.part),
    () => (body.order_id === undefined ? null : orderKnown(context, body.order_id)),
    () => moneySound(context, body, body.price_minor),
  );

export const partUsed: Rule<'part-used'> = (context, { body }) =>
  firstOf(
    () => itemAtHand(context, body.item_id),
    () => bagKnown(context, body.bag_id),
    () => bagHoldsEnough(context, body.bag_id, body.count),
  );

export const bagSet: Rule<'bag-set'> = (context, { body }) => bagKnown(context, body.bag_id);

function bagHoldsPart({ state }: RuleContext, bagId: string, part: string): Objection | null {
  const bag = state.bags.get(bagId);
  if (!bag || bag.part === part) return null;
  return refuse('id-taken', 'body.bag_id', `the bag "${bagId}" holds ${bag.name} (${bag.part}); put these into a bag of their own`);
}

function bagKnown({ state }: RuleContext, bagId: string): Objection | null {
  if (state.bags.has(bagId)) return null;
  return refuse('unknown-bag', 'body.bag_id', `there is no bag "${bagId}"; there are ${nearest(bagId, state.bags.keys())}`);
}

function bagHoldsEnough({ state }: RuleContext, bagId: string, count: number): Objection | null {
  const bag = state.bags.get(bagId);
  if (!bag || bag.count >= count) return null;
  return refuse('not-enough-parts', 'body.count', `the bag "${bagId}" holds ${bag.count} of ${bag.name}, not ${count}`);
}
