import { itemAtHand } from './known.ts';
import { moneySound } from './money.ts';
import { nearest } from './nearest.ts';
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
    () => bagHoldsEnough(context, body.bag_id, body.count),
  );

export const orderPlaced: Rule<'order-placed'> = (context, { body }) =>
  firstOf(
    () =>
      context.state.orders.has(body.order_id)
        ? refuse('id-taken', 'body.order_id', `another order is called "${body.order_id}" already; give this one a name of its own`)
        : null,
    () =>
      moneySound(
        context,
        body,
        body.lines.reduce((sum, line) => sum + line.price_minor, body.postage_minor),
      ),
  );

export const orderArrived: Rule<'order-arrived'> = (context, { body }) =>
  firstOf(
    () => orderKnown(context, body.order_id),
    () =>
      context.state.orders.get(body.order_id)!.arrivedAt === null
        ? null
        : refuse('already-arrived', 'body.order_id', `the order "${body.order_id}" has arrived already`),
  );

function bagHoldsPart({ state }: RuleContext, bagId: string, part: string): Objection | null {
  const bag = state.bags.get(bagId);
  if (!bag || bag.part === part) return null;
  return refuse('id-taken', 'body.bag_id', `the bag "${bagId}" holds ${bag.name} (${bag.part}); put these into a bag of their own`);
}

function bagHoldsEnough({ state }: RuleContext, bagId: string, count: number): Objection | null {
  const bag = state.bags.get(bagId);
  if (!bag) return refuse('unknown-bag', 'body.bag_id', `there is no bag "${bagId}"; there are ${nearest(bagId, state.bags.keys())}`);
  if (bag.count >= count) return null;
  return refuse('not-enough-parts', 'body.count', `the bag "${bagId}" holds ${bag.count} of ${bag.name}, not ${count}`);
}

function orderKnown({ state }: RuleContext, id: string): Objection | null {
  if (state.orders.has(id)) return null;
  return refuse('unknown-order', 'body.order_id', `there is no order "${id}"; there are ${nearest(id, state.orders.keys())}`);
}
