import type { Gesture } from './gesture.ts';

/** Kept for oneself. */
export const keepItem = (itemId: string, reason: string): Gesture => ({
  said: 'kept',
  drafts: [{ kind: 'kept', body: { item_id: itemId, reason } }],
});
