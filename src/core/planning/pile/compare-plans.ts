import type { ItemPlan, PilePlan } from './plan.ts';

export interface PlanChange {
  readonly item: string;
  readonly before: Pick<ItemPlan, 'does' | 'remedies'> | null;
  readonly after: Pick<ItemPlan, 'does' | 'remedies'> | null;
  /** `new` and `gone` items; `itself`: the event was about it; `others`: something else in the pile made another way better. */
  readonly why: 'new' | 'gone' | 'itself' | 'others';
}

export interface PlanChanges {
  readonly items: readonly PlanChange[];
  /** Parts that are ordered more (or fewer, negative) than before. */
  readonly orders: readonly { readonly part: string; readonly more: number }[];
  readonly profitMinor: number;
}

/** What is different from the last plan; `touched` names the items that the events since were about. */
export function comparePlans(before: PilePlan, after: PilePlan, touched: ReadonlySet<string>): PlanChanges {
  const old = new Map(before.items.map((item) => [item.item, item]));
  const now = new Map(after.items.map((item) => [item.item, item]));
  const items: PlanChange[] = [];
  for (const [item, to] of now) {
    const from = old.get(item);
    if (!from) items.push({ item, before: null, after: decisionOf(to), why: 'new' });
    else if (!sameDecision(from, to))
      items.push({ item, before: decisionOf(from), after: decisionOf(to), why: touched.has(item) ? 'itself' : 'others' });
  }
  for (const [item, from] of old) if (!now.has(item)) items.push({ item, before: decisionOf(from), after: null, why: 'gone' });
  const more = orderedParts(after);
  for (const [part, count] of orderedParts(before)) more.set(part, (more.get(part) ?? 0) - count);
  return {
    items,
    orders: [...more].filter(([, count]) => count !== 0).map(([part, count]) => ({ part, more: count })),
    profitMinor: after.profit.meanMinor - before.profit.meanMinor,
  };
}

const decisionOf = ({ does, remedies }: ItemPlan): Pick<ItemPlan, 'does' | 'remedies'> => ({ does, remedies });

function sameDecision(a: ItemPlan, b: ItemPlan): boolean {
  const slots = Object.keys(a.remedies);
  return (
    a.does === b.does && slots.length === Object.keys(b.remedies).length && slots.every((slot) => a.remedies[slot] === b.remedies[slot])
  );
}

function orderedParts({ baskets }: PilePlan): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { lines } of baskets) for (const { part, count } of lines) counts.set(part, (counts.get(part) ?? 0) + count);
  return counts;
}
