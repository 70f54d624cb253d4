import type { Gesture } from './gesture.ts';

/** A line in the log of a unit. */
export const writeNote = (itemId: string, text: string): Gesture => ({
  said: 'your note',
  drafts: [{ kind: 'note-written', body: { item_id: itemId, text } }],
});
