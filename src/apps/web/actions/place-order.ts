import type { Gesture } from './gesture.ts';

export interface OrderAnswer {
  readonly orderId: string;
  readonly supplier: string;
  readonly lines: readonly { readonly part: string; readonly name: string; readonly count: number; readonly priceMinor: number }[];
  readonly postageMinor: number;
  readonly currency: string;
  /** By which it should come; null where nothing was said. */
  readonly dueDay: string | null;
}

/** Parts ordered: paid, and on their way. */
export const placeOrder = (order: OrderAnswer): Gesture => ({
  said: `order at ${order.supplier}`,
  drafts: [
    {
      kind: 'order-placed',
      body: {
        order_id: order.orderId,
        supplier: order.supplier,
        lines: order.lines.map((line) => ({ part: line.part, name: line.name, count: line.count, price_minor: line.priceMinor })),
        postage_minor: order.postageMinor,
        currency: order.currency,
        ...(order.dueDay === null ? {} : { due_day: order.dueDay }),
      },
    },
  ],
});
