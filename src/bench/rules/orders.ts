import type { Order } from '../state.ts';
import { onItsWayMinor } from '../stock/order-state.ts';
import { moneySound } from './money.ts';
import { nearest } from './nearest.ts';
import { firstOf, refuse, type Objection, type Rule, type RuleContext } from './rule.ts';

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
    () => orderOpen(context, body.order_id),
    () => (body.counts ? countsSound(context.state.orders.get(body.order_id)!, body.counts) : null),
  );

export const orderCancelled: Rule<'order-cancelled'> = (context, { body }) =>
  firstOf(
    () => orderKnown(context, body.order_id),
    () => orderOpen(context, body.order_id),
    () =>
      body.refund_minor <= onItsWayMinor(context.state.orders.get(body.order_id)!)
        ? null
        : refuse('refund-too-large', 'body.refund_minor', 'more is paid back than was paid for what had not come'),
  );

/** An objection where no order has that name. */
export function orderKnown({ state }: RuleContext, id: string): Objection | null {
  if (state.orders.has(id)) return null;
  return refuse('unknown-order', 'body.order_id', `there is no order "${id}"; there are ${nearest(id, state.orders.keys())}`);
}

function orderOpen({ state }: RuleContext, id: string): Objection | null {
  const order = state.orders.get(id)!;
  if (order.arrivedAt !== null) return refuse('already-arrived', 'body.order_id', `the order "${id}" has arrived already`);
  if (order.cancelledAt !== null) return refuse('order-cancelled', 'body.order_id', `the order "${id}" was cancelled`);
  return null;
}

function countsSound({ lines, lineCosts }: Order, counts: readonly number[]): Objection | null {
  const off = (message: string, at = ''): Objection => refuse('more-than-ordered', `body.counts${at}`, message);
  if (counts.length !== lines.length) return off(`${counts.length} counts do not go with the ${lines.length} lines of the order`);
  const over = counts.findIndex((count, i) => count > lines[i]!.count - lineCosts[i]!.came);
  if (over >= 0) return off(`only ${lines[over]!.count - lineCosts[over]!.came} × ${lines[over]!.name} are still to come`, `.${over}`);
  return counts.some((count) => count > 0) ? null : off('nothing of it came');
}
