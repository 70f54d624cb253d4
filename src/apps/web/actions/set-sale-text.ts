import type { Gesture } from './gesture.ts';

/** Own words of a listing, kept for all units. */
export const setSaleText = (template: string): Gesture => ({
  said: 'your words for listings',
  drafts: [{ kind: 'sale-text-set', body: { template } }],
});
