import { layersCost } from '../../core/books/index.ts';
import { isGone } from '../books/carried.ts';
import type { Model } from '../models/index.ts';
import { rowOf } from '../row-of.ts';
import { homeOf } from '../slots.ts';
import type { Bag, BenchState, Item, Order } from '../state.ts';
import { lowStock, type PartWant, type ShortPart } from '../stock/low-stock.ts';
import { onItsWayMinor, orderState } from '../stock/order-state.ts';
import type { DrawerView } from '../views/index.ts';

/** What the drawer does not know by itself. */
export interface AboutDrawer {
  readonly worksChance: (itemId: string) => number;
  /** Parts that planned work takes. */
  readonly wants: readonly PartWant[];
  /** Such as 2026-05-01. */
  readonly today: string;
}

/** Loose assemblies with the chance that each works, bags of parts, what planned work lacks, and orders. */
export function drawerView(
  state: Readonly<BenchState>,
  models: ReadonlyMap<string, Model>,
  { worksChance, wants, today }: AboutDrawer,
): DrawerView {
  const loose = [...state.items.values()].filter((item) => item.kind === 'assembly' && item.inside === null && !isGone(item));
  const needs = largestNeeds(models);
  return {
    currency: state.settings.currency,
    assemblies: loose.map((item) => ({ row: rowOf(state, item), works_chance: worksChance(item.id), from: cameFrom(state, item) })),
    bags: [...state.bags.values()].map((bag) => bagLine(bag, needs.get(bag.part) ?? 1)),
    short: lowStock(wants, state).map(shortLine),
    orders: [...state.orders.values()].map((order) => orderLine(order, today)),
  };
}

/** The unit that an assembly was taken out of, or the lot that it was bought in. */
function cameFrom(state: Readonly<BenchState>, item: Item): string {
  const home = state.items.get(homeOf(item) ?? '');
  return home ? `#${home.number} ${home.name}` : (state.lots.get(item.lotId ?? '')?.title ?? '');
}

/** The most of each part that one remedy of any model takes. */
function largestNeeds(models: ReadonlyMap<string, Model>): ReadonlyMap<string, number> {
  const needs = new Map<string, number>();
  for (const { file } of models.values()) {
    for (const { part, count } of file.remedies.flatMap((remedy) => remedy.parts)) needs.set(part, Math.max(count, needs.get(part) ?? 0));
  }
  return needs;
}

/** Low: not enough left to do the hungriest remedy twice. */
const bagLine = (bag: Bag, need: number): DrawerView['bags'][number] => ({
  id: bag.id,
  part: bag.part,
  name: bag.name,
  place: bag.place,
  count: bag.count,
  cost_minor: layersCost(bag.layers),
  low: bag.count < 2 * need,
  layers: bag.layers.map(({ count, costMinor }) => ({ count, cost_minor: costMinor })),
  pattern: bag.pattern,
});

const shortLine = ({ atHand, onItsWay, expected, for: items, ...rest }: ShortPart): DrawerView['short'][number] => ({
  ...rest,
  expected: Math.round(expected * 100) / 100,
  at_hand: atHand,
  on_its_way: onItsWay,
  for: [...items],
});

const orderLine = (order: Order, today: string): DrawerView['orders'][number] => ({
  id: order.id,
  supplier: order.supplier,
  state: orderState(order, today),
  lines: order.lines.map((line, i) => ({ ...line, came: order.lineCosts[i]!.came })),
  cost_minor: order.costMinor,
  on_its_way_minor: onItsWayMinor(order),
  placed_at: order.placedAt,
  due_day: order.dueDay,
  arrived_at: order.arrivedAt,
  cancelled_at: order.cancelledAt,
});
