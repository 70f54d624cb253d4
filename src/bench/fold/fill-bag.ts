import type { BenchState, Bag } from '../state.ts';

interface Filling {
  readonly bagId: string;
  readonly part: string;
  readonly name: string;
  readonly place: string;
  readonly count: number;
  readonly costMinor: number;
  readonly pattern?: Bag['pattern'] | undefined;
  readonly demo: boolean;
}

/** A new layer on top of a bag, which is made where it is not there yet. */
export function fillBag(state: BenchState, { bagId, part, name, place, count, costMinor, pattern, demo }: Filling): void {
  const bag = state.bags.get(bagId) ?? { id: bagId, part, name, place, count: 0, layers: [], pattern: null, demo };
  if (place !== '') bag.place = place;
  if (pattern) bag.pattern = pattern;
  bag.count += count;
  bag.layers.push({ count, costMinor });
  state.bags.set(bagId, bag);
}
