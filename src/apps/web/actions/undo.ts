import type { Gesture } from './gesture.ts';

/** Takes recorded events back, the last one first; the log keeps them, struck through. */
export const undo = (eventIds: readonly string[], reason = ''): Gesture => ({
  said: 'taken back',
  drafts: eventIds.toReversed().map((corrects) => ({ kind: 'correction', body: { corrects, reason } })),
});
