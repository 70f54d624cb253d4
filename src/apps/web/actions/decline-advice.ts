import type { Gesture } from './gesture.ts';

/** "I disagree": the advice is not given again for this unit, and the reason stands in the log. */
export const declineAdvice = (itemId: string, advice: string, reason: string): Gesture => ({
  said: 'you disagree; here is the next best',
  drafts: [{ kind: 'advice-declined', body: { item_id: itemId, advice, reason } }],
});
