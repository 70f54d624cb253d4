import type { Gesture } from './gesture.ts';

/** The ordered parts are here and lie in this place: all that had not come, or so many of each line. */
export const orderArrived = (orderId: string, place: string, counts?: readonly number[]): Gesture => ({
  said: counts ? 'part of an order arrived' : 'order arrived',
  drafts: [{ kind: 'order-arrived', body: { order_id: orderId, place, ...(counts ? { counts: [...counts] } : {}) } }],
});
