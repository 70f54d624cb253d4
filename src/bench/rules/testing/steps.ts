import type { Step } from '../../testing/events.ts';

const GBP = { currency: 'GBP' };

/** Short ways to write the events of the rules' tests. */

export const lotOf = (lot_id: string, items: readonly object[], more: object = {}): Step => [
  'lot-bought',
  {
    lot_id,
    title: 't',
    seller: 's',
    price_minor: 900,
    ...GBP,
    items: items.map((item) => ({ name: 'n', model_id: 'lamp-1', expected_value_minor: 1, ...item })),
    ...more,
  },
];
export const move = (assembly_id: string, slot: string, from_item: string | null, to_item: string | null): Step => [
  'transplant-done',
  { assembly_id, slot, from_item, to_item },
];
export const sell = (item_id: string, more: object = {}): Step => ['sold', { item_id, as: 'for-parts', price_minor: 900, ...GBP, ...more }];
export const pass = (step: string): Step => ['proof-step-done', { item_id: 'lamp-a', step, outcome: 'pass' }];
export const trial = (more: object = {}): Step => ['trial-done', { item_id: 'lamp-a', function: 'light', outcome: 'fails', ...more }];
export const weigh = (more: object = {}): Step => [
  'listing-weighed',
  { listing_id: 'l-1', title: 't', seller: 's', model_id: 'lamp-1', price_minor: 1, ...GBP, ...more },
];
export const buyPart = (more: object = {}): Step => [
  'part-bought',
  { bag_id: 'bag', part: 'bulb-3v', name: 'Bulb', count: 2, price_minor: 90, ...GBP, ...more },
];
export const order: Step = [
  'order-placed',
  { order_id: 'o-1', supplier: 's', lines: [{ part: 'wire', name: 'w', count: 1, price_minor: 5 }], ...GBP },
];
export const lampB = lotOf('lot-2', [{ item_id: 'lamp-b' }]);
export const lamp9 = lotOf('lot-9', [{ item_id: 'lamp-9a', model_id: 'lamp-9' }]);
export const lamp2 = lotOf('lot-8', [{ item_id: 'lamp-2a', model_id: 'lamp-2' }]);
export const boardOut = move('board-a', 'board', 'lamp-a', null);
export const scrap: Step = ['scrapped', { item_id: 'lamp-a', reason: 'burnt' }];
