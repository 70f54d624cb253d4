import type { BenchState } from '../state.ts';

export interface PartStock {
  readonly count: number;
  /** What the next one cost, minor units. */
  readonly eachMinor: number;
}

/** Loose parts at hand, by part, over all bags. */
export function partsAtHand(state: Pick<BenchState, 'bags'>): ReadonlyMap<string, PartStock> {
  const stock = new Map<string, PartStock>();
  for (const bag of state.bags.values()) {
    if (bag.count <= 0) continue;
    const before = stock.get(bag.part);
    const next = bag.layers.find((layer) => layer.count > 0);
    const eachMinor = before?.eachMinor ?? (next ? next.costMinor / next.count : 0);
    stock.set(bag.part, { count: (before?.count ?? 0) + bag.count, eachMinor });
  }
  return stock;
}
