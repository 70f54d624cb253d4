import { layersCost } from '../../core/books/index.ts';
import { isGone } from '../books/carried.ts';
import type { Model } from '../models/index.ts';
import { rowOf } from '../row-of.ts';
import { homeOf } from '../slots.ts';
import type { Bag, BenchState, Item } from '../state.ts';
import type { DrawerView } from '../views/index.ts';

/** Loose assemblies with the chance that each works, bags of parts, and orders. */
export function drawerView(
  state: Readonly<BenchState>,
  models: ReadonlyMap<string, Model>,
  worksChance: (itemId: string) => number,
): DrawerView {
  const loose = [...state.items.values()].filter((item) => item.kind === 'assembly' && item.inside === null && !isGone(item));
  const needs = largestNeeds(models);
  return {
    currency: state.settings.currency,
    assemblies: loose.map((item) => ({ row: rowOf(state, item), works_chance: worksChance(item.id), from: cameFrom(state, item) })),
    bags: [...state.bags.values()].map((bag) => bagLine(bag, needs.get(bag.part) ?? 1)),
    orders: [...state.orders.values()].map((order) => ({
      id: order.id,
      supplier: order.supplier,
      lines: order.lines,
      cost_minor: order.costMinor,
      placed_at: order.placedAt,
      arrived_at: order.arrivedAt,
    })),
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
});
