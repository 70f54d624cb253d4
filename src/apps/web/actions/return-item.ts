import type { Gesture } from './gesture.ts';

export interface ReturnAnswer {
  readonly itemId: string;
  readonly refundMinor: number;
  readonly feesBackMinor: number;
  readonly postageMinor: number;
  readonly reason: string;
}

/** A sold unit came back. */
export const returnItem = (answer: ReturnAnswer): Gesture => ({
  said: 'it came back',
  drafts: [
    {
      kind: 'returned',
      body: {
        item_id: answer.itemId,
        refund_minor: answer.refundMinor,
        fees_back_minor: answer.feesBackMinor,
        postage_minor: answer.postageMinor,
        reason: answer.reason,
      },
    },
  ],
});
