import type { Gesture } from './gesture.ts';

/** The thing is here; what it looks like goes on record before anything is touched. */
export const receiveItem = (itemId: string, condition: string): Gesture => ({
  said: 'it is here',
  drafts: [{ kind: 'item-received', body: { item_id: itemId, condition } }],
});
