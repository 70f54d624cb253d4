import { splitByValue } from '../../core/books/index.ts';
import { post } from '../books/post.ts';
import { toBench } from '../books/to-bench.ts';
import type { Body } from '../events/index.ts';
import type { BenchState, Order } from '../state.ts';
import { hasAllCome, isOpen, onItsWayMinor } from '../stock/order-state.ts';
import { fillBag } from './fill-bag.ts';
import type { Apply } from './fold.ts';
import { missing } from './fold.ts';

/** Paid when placed; the money waits on order until the parcel comes. */
export const orderPlaced: Apply<'order-placed'> = ({ state }, event) => {
  const { body } = event;
  if (state.orders.has(body.order_id)) return missing('free name for order', body.order_id);
  const paid = body.lines.reduce((sum, line) => sum + line.price_minor, body.postage_minor);
  const costMinor = toBench(paid, body, state.settings.currency);
  if (costMinor === null) return missing('price that can be reckoned for order', body.order_id);
  state.orders.set(body.order_id, {
    id: body.order_id,
    supplier: body.supplier,
    lines: body.lines,
    costMinor,
    postageMinor: toBench(body.postage_minor, body, state.settings.currency) ?? 0,
    lineCosts: splitByValue(costMinor, lineWeights(body.lines)).map((share) => ({ costMinor: share, cameMinor: 0, came: 0 })),
    placedAt: event.at,
    dueDay: body.due_day ?? null,
    arrivedAt: null,
    cancelledAt: null,
    lostMinor: 0,
    demo: event.device === 'demo',
  });
  post(state, event, [
    ['on-order', costMinor],
    ['cash', -costMinor],
  ]);
  return null;
};

/** What came of each line fills the bag named like its part, with its share of the cost; postage is spread over the lines by price. */
export const orderArrived: Apply<'order-arrived'> = ({ state }, event) => {
  const order = state.orders.get(event.body.order_id);
  if (!order) return missing('order', event.body.order_id);
  if (!isOpen(order)) return missing('order on its way', order.id);
  const before = onItsWayMinor(order);
  order.lines.forEach((line, i) => {
    const most = line.count - order.lineCosts[i]!.came;
    const count = event.body.counts ? Math.min(most, event.body.counts[i] ?? 0) : most;
    if (count <= 0) return;
    const costMinor = comes(order, i, count);
    fillBag(state, { ...line, count, bagId: bagNameFor(state, line.part), costMinor, place: event.body.place, demo: order.demo });
  });
  const cameMinor = before - onItsWayMinor(order);
  if (hasAllCome(order)) order.arrivedAt = event.at;
  post(state, event, [
    ['parts', cameMinor],
    ['on-order', -cameMinor],
  ]);
  return null;
};

/** What had not come is not waited for any more: what is paid back is cash, the rest of its cost is lost. */
export const orderCancelled: Apply<'order-cancelled'> = ({ state }, event) => {
  const order = state.orders.get(event.body.order_id);
  if (!order) return missing('order', event.body.order_id);
  if (!isOpen(order)) return missing('order on its way', order.id);
  const waitingMinor = onItsWayMinor(order);
  const refundMinor = event.body.refund_minor;
  order.cancelledAt = event.at;
  order.lostMinor = waitingMinor - refundMinor;
  post(state, event, [
    ['cash', refundMinor],
    ['write-off', order.lostMinor],
    ['on-order', -waitingMinor],
  ]);
  return null;
};

/** Takes `count` more of a line as come, and gives their share of its cost; all shares of a line sum to its cost. */
function comes(order: Order, index: number, count: number): number {
  const line = order.lineCosts[index]!;
  line.came += count;
  const whole = Math.round((line.costMinor * line.came) / order.lines[index]!.count);
  const costMinor = whole - line.cameMinor;
  line.cameMinor = whole;
  return costMinor;
}

/** The part's own name, or the first name after it that no bag of another part has. */
function bagNameFor(state: BenchState, part: string): string {
  let name = part;
  for (let i = 2; (state.bags.get(name)?.part ?? part) !== part; i++) name = `${part}.${i}`;
  return name;
}

/** By price; lines that are all free share by count. */
const lineWeights = (lines: Body<'order-placed'>['lines']): number[] =>
  lines.some((line) => line.price_minor > 0) ? lines.map((line) => line.price_minor) : lines.map((line) => line.count);
