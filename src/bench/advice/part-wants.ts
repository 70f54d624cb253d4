import type { PartWant } from '../stock/low-stock.ts';
import type { Item } from '../state.ts';
import type { Desk, Weighed } from './desk.ts';
import { partName } from './say.ts';

const UNDER_WORK: ReadonlySet<string> = new Set(['bought', 'on-the-bench']);

/**
 * The parts that mending takes, each step of a repair with the chance that it is come to: of the units that the plan of the pile opens, or, without such a plan, of
 * every unit under work that is best mended by itself.
 */
export function partWants(desk: Desk, opened: ReadonlySet<string> | null): PartWant[] {
  const units = [...desk.state.items.values()].filter((item) => item.kind === 'unit' && UNDER_WORK.has(item.status));
  return units.flatMap((item) => {
    const weighed = desk.weigh(item);
    if (!weighed) return [];
    const isMended = opened ? opened.has(item.id) : weighed.decision.weighed.best === 'repair';
    return isMended ? wantsOf(item, weighed) : [];
  });
}

function wantsOf(item: Item, { judged, decision }: Weighed): PartWant[] {
  let reached = 1 - judged.belief.none;
  return decision.repair.plan.steps.flatMap(({ remedy, chance }) => {
    const parts = judged.model.file.remedies.find(({ id }) => id === remedy.id)?.parts ?? [];
    const wants = parts.map(({ part, count }) => ({
      part,
      name: partName(judged.model, part),
      count,
      chance: reached,
      for: `#${item.number} ${item.name}`,
    }));
    reached *= Math.max(0, 1 - remedy.risk - chance);
    return wants;
  });
}
