import type { Order } from '../state.ts';

/** How an order stands. */
export const ORDER_STATES = ['ordered', 'late', 'partly-come', 'come', 'cancelled'] as const;
export type OrderState = (typeof ORDER_STATES)[number];

type Standing = Pick<Order, 'arrivedAt' | 'cancelledAt' | 'lines' | 'lineCosts' | 'costMinor' | 'dueDay'>;

/** Something of it may still come. */
export const isOpen = ({ arrivedAt, cancelledAt }: Pick<Order, 'arrivedAt' | 'cancelledAt'>): boolean =>
  arrivedAt === null && cancelledAt === null;

export const hasAllCome = ({ lines, lineCosts }: Pick<Order, 'lines' | 'lineCosts'>): boolean =>
  lines.every((line, i) => lineCosts[i]!.came >= line.count);

/** Paid for what may still come, in the currency of the bench. */
export const onItsWayMinor = (order: Omit<Standing, 'dueDay'>): number =>
  isOpen(order) ? order.lineCosts.reduce((sum, { cameMinor }) => sum - cameMinor, order.costMinor) : 0;

/** How it stands on a day such as 2026-05-01. An order without a day by which it should come is never late. */
export function orderState(order: Standing, today: string): OrderState {
  if (order.cancelledAt !== null) return 'cancelled';
  if (order.arrivedAt !== null) return 'come';
  if (order.dueDay !== null && today > order.dueDay) return 'late';
  return order.lineCosts.some(({ came }) => came > 0) ? 'partly-come' : 'ordered';
}
