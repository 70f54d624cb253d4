import type { Tick } from '../../core/teardown/index.ts';
import type { ModelFile } from '../models/index.ts';
import type { BenchState, Item } from '../state.ts';
import { screwCount, type ScrewCount } from './screw-count.ts';

/** The steps that are done on an item and not put back, with the time of each where it was taken. */
export const ticksOf = (item: Pick<Item, 'opened' | 'stepTimes'>): Tick[] =>
  item.opened.map((step) => ({ step, minutes: item.stepTimes.findLast((each) => each.step === step)?.minutes ?? 0 }));

/** Minutes that each step of a model took, on all items of that model. */
export function stepTimesOf({ items }: Pick<BenchState, 'items'>, modelId: string): ReadonlyMap<string, readonly number[]> {
  const times = new Map<string, number[]>();
  for (const item of items.values()) {
    if (item.modelId !== modelId) continue;
    for (const { step, minutes } of item.stepTimes) times.set(step, [...(times.get(step) ?? []), minutes]);
  }
  return times;
}

/** What came out of an item and went in again since it was last opened. */
export function screwCountOf(file: ModelFile, item: Pick<Item, 'fasteners'>): ScrewCount {
  const counted = [...item.fasteners];
  const out = counted.filter(([, { out: count }]) => count > 0).map(([set, { out: count, foreign }]) => ({ set, count, foreign }));
  return screwCount(
    file,
    out,
    counted.map(([set, { back }]) => ({ set, count: back })),
  );
}
