import type { Gesture } from './gesture.ts';

/** Not bought, and why. */
export const dropListing = (listingId: string, reason: string): Gesture => ({
  said: 'dropped',
  drafts: [{ kind: 'listing-dropped', body: { listing_id: listingId, reason } }],
});
