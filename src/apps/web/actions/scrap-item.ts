import type { Gesture } from './gesture.ts';

/** Thrown away, with the reason; its cost is written off. */
export const scrapItem = (itemId: string, reason: string): Gesture => ({
  said: 'scrapped',
  drafts: [{ kind: 'scrapped', body: { item_id: itemId, reason } }],
});
