import type { Gesture } from './gesture.ts';

/** The ordered parts are here and lie in this place. */
export const orderArrived = (orderId: string, place: string): Gesture => ({
  said: 'order arrived',
  drafts: [{ kind: 'order-arrived', body: { order_id: orderId, place } }],
});
