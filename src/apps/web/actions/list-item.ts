import type { Gesture } from './gesture.ts';

/** It stands for sale at this price, in this place. */
export const listItem = (itemId: string, priceMinor: number, place: string): Gesture => ({
  said: `listed at ${place}`,
  drafts: [{ kind: 'listed', body: { item_id: itemId, price_minor: priceMinor, place } }],
});
