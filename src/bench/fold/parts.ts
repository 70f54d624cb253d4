import { takeFifo } from '../../core/books/index.ts';
import { accountOf } from '../books/carried.ts';
import { post } from '../books/post.ts';
import { toBench } from '../books/to-bench.ts';
import { fillBag } from './fill-bag.ts';
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
  fillBag(state, { ...body, bagId: body.bag_id, costMinor, demo: event.device === 'demo' });
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

/** Another place, other terminals. */
export const bagSet: Apply<'bag-set'> = ({ state }, { body }) => {
  const bag = state.bags.get(body.bag_id);
  if (!bag) return missing('bag', body.bag_id);
  if (body.place !== undefined) bag.place = body.place;
  if (body.pattern !== undefined) bag.pattern = body.pattern;
  return null;
};
