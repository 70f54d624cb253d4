import type { Gesture } from './gesture.ts';

/** So many of a bag went into a unit. */
export const takeFromBag = (bagId: string, name: string, itemId: string, count: number): Gesture => ({
  said: `${count} × ${name} used`,
  drafts: [{ kind: 'part-used', body: { bag_id: bagId, item_id: itemId, count } }],
});
