import type { Gesture } from './gesture.ts';

/** What had not come of an order will not come any more. */
export const cancelOrder = (orderId: string, refundMinor: number, reason: string): Gesture => ({
  said: 'order cancelled',
  drafts: [{ kind: 'order-cancelled', body: { order_id: orderId, refund_minor: refundMinor, reason } }],
});
