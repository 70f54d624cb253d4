import { splitByValue, takeFifo } from '../../core/books/index.ts';
import { accountOf } from '../books/carried.ts';
import { post } from '../books/post.ts';
import { toBench } from '../books/to-bench.ts';
import type { BenchState, Order } from '../state.ts';
import type { Apply } from './fold.ts';
import { missing, onItem } from './fold.ts';
import { passCostToHome } from './pass-cost.ts';

/** Bought over the counter: paid now. A bag that is known gets a new layer on top. */
export const partBought: Apply<'part-bought'> = ({ state }, event) => {
  const { body } = event;
  const bag = state.bags.get(body.bag_id);
  if (bag && bag.part !== body.part) return missing('free name for bag', body.bag_id);
  const costMinor = toBench(body.price_minor, body, state.settings.currency);
  if (costMinor === null) return missing('price that can be reckoned for bag', body.bag_id);
  fill(state, { ...body, bagId: body.bag_id, costMinor, demo: event.device === 'demo' });
  post(state, event, [
    ['parts', costMinor],
    ['cash', -costMinor],
  ]);
  return null;
};

/** Oldest layers first; the cost goes to the item. What the bag does not hold costs nothing. */
export const partUsed: Apply<'part-used'> = (fold, event) => {
  const bag = fold.state.bags.get(event.body.bag_id);
  if (!bag) return missing('bag', event.body.bag_id);
  return onItem(fold, event, (item) => {
    const taken = takeFifo(bag.layers, event.body.count);
    bag.layers = taken.rest;
    bag.count -= taken.count;
    item.costs.push({ reason: 'part', amountMinor: taken.costMinor, eventId: event.id, text: `${taken.count} × ${bag.name}` });
    post(fold.state, event, [
      [accountOf(item.status), taken.costMinor, item.id],
      ['parts', -taken.costMinor],
    ]);
    passCostToHome(fold, event, item);
  });
};

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
    placedAt: event.at,
    arrivedAt: null,
    demo: event.device === 'demo',
  });
  post(state, event, [
    ['on-order', costMinor],
    ['cash', -costMinor],
  ]);
  return null;
};

/** Each line fills the bag named like its part; postage is spread over the lines by price. */
export const orderArrived: Apply<'order-arrived'> = ({ state }, event) => {
  const order = state.orders.get(event.body.order_id);
  if (!order) return missing('order', event.body.order_id);
  if (order.arrivedAt !== null) return missing('order on its way', order.id);
  order.arrivedAt = event.at;
  const shares = splitByValue(order.costMinor, lineWeights(order));
  order.lines.forEach((line, index) => {
    fill(state, { ...line, bagId: bagNameFor(state, line.part), costMinor: shares[index]!, place: event.body.place, demo: order.demo });
  });
  post(state, event, [
    ['parts', order.costMinor],
    ['on-order', -order.costMinor],
  ]);
  return null;
};

interface Filling {
  readonly bagId: string;
  readonly part: string;
  readonly name: string;
  readonly place: string;
  readonly count: number;
  readonly costMinor: number;
  readonly demo: boolean;
}

function fill(state: BenchState, { bagId, part, name, place, count, costMinor, demo }: Filling): void {
  const bag = state.bags.get(bagId) ?? { id: bagId, part, name, place, count: 0, layers: [], demo };
  if (place !== '') bag.place = place;
  bag.count += count;
  bag.layers.push({ count, costMinor });
  state.bags.set(bagId, bag);
}

/** The part's own name, or the first name after it that no bag of another part has. */
function bagNameFor(state: BenchState, part: string): string {
  let name = part;
  for (let i = 2; (state.bags.get(name)?.part ?? part) !== part; i++) name = `${part}.${i}`;
  return name;
}

/** By price; lines that are all free share by count. */
const lineWeights = ({ lines }: Order): number[] =>
  lines.some((line) => line.price_minor > 0) ? lines.map((line) => line.price_minor) : lines.map((line) => line.count);
