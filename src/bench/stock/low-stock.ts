import type { BenchState } from '../state.ts';
import { isOpen } from './order-state.ts';

/** Parts that work which is planned takes. */
export interface PartWant {
  readonly part: string;
  readonly name: string;
  readonly count: number;
  /** That the work comes to it, 0 to 1: later steps are reached only when the earlier ones do not help. */
  readonly chance: number;
  /** What it is for, as one says it: "#7 Blue Tern". */
  readonly for: string;
}

/** A part of which less lies in the drawer than the plan may take. */
export interface ShortPart {
  readonly part: string;
  readonly name: string;
  /** If all of the plan is done. */
  readonly wanted: number;
  /** What it takes on average. */
  readonly expected: number;
  readonly atHand: number;
  readonly onItsWay: number;
  /** Wanted, and neither at hand nor on its way. */
  readonly short: number;
  readonly for: readonly string[];
}

/**
 * What the drawer lacks for a plan: every part of which it may take more than lies in bags, what is shortest on average first. What is on its way counts as coming, but
 * not as being here.
 */
export function lowStock(wants: readonly PartWant[], state: Pick<BenchState, 'bags' | 'orders'>): ShortPart[] {
  const [atHand, onItsWay] = [countInBags(state.bags.values()), countOnItsWay(state.orders.values())];
  const byPart = new Map<string, PartWant[]>();
  for (const want of wants) byPart.set(want.part, [...(byPart.get(want.part) ?? []), want]);
  return [...byPart]
    .map(([part, all]) => shortOf(part, all, atHand.get(part) ?? 0, onItsWay.get(part) ?? 0))
    .filter(({ wanted, atHand: held }) => wanted > held)
    .sort((a, b) => lack(b) - lack(a) || b.short - a.short || (a.part < b.part ? -1 : 1));
}

const lack = ({ expected, atHand, onItsWay }: ShortPart): number => expected - atHand - onItsWay;

function shortOf(part: string, wants: readonly PartWant[], atHand: number, onItsWay: number): ShortPart {
  const wanted = wants.reduce((sum, { count }) => sum + count, 0);
  return {
    part,
    name: wants[0]!.name,
    wanted,
    expected: wants.reduce((sum, { count, chance }) => sum + count * chance, 0),
    atHand,
    onItsWay,
    short: Math.max(0, wanted - atHand - onItsWay),
    for: [...new Set(wants.map((want) => want.for))],
  };
}

function countInBags(bags: Iterable<{ readonly part: string; readonly count: number }>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { part, count } of bags) counts.set(part, (counts.get(part) ?? 0) + count);
  return counts;
}

function countOnItsWay(orders: ReturnType<BenchState['orders']['values']>): Map<string, number> {
  const counts = new Map<string, number>();
  for (const order of orders) {
    if (!isOpen(order)) continue;
    order.lines.forEach(({ part, count }, i) => counts.set(part, (counts.get(part) ?? 0) + count - order.lineCosts[i]!.came));
  }
  return counts;
}
