import { layersCost } from '../../core/books/index.ts';
import type { BenchState } from '../state.ts';
import { onItsWayMinor } from '../stock/order-state.ts';
import { accountOf, costOf, type HoldingAccount } from './carried.ts';

type Carried = Record<HoldingAccount | 'parts' | 'on-order', number>;

/** What stands in each stock-like account, counted from the things themselves: items, bags, and orders on their way. */
export function carriedByAccount(state: Readonly<BenchState>): Carried {
  const carried: Carried = { stock: 0, 'own-use': 0, 'write-off': 0, 'cost-of-sales': 0, parts: 0, 'on-order': 0 };
  for (const item of state.items.values()) carried[accountOf(item.status)] += costOf(item);
  for (const bag of state.bags.values()) carried.parts += layersCost(bag.layers);
  for (const order of state.orders.values()) {
    carried['on-order'] += onItsWayMinor(order);
    carried['write-off'] += order.lostMinor;
  }
  return carried;
}
