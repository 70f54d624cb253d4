import type { Claim } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

/** What the seller says of this unit. */
export const recordClaim = (itemId: string, claim: Claim): Gesture => ({
  said: 'what the seller says',
  drafts: [{ kind: 'claim-made', body: { item_id: itemId, claim } }],
});
