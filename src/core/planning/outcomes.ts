import { PlanningError } from './planning-error.ts';

/** One way that things may end: so much money, with such a chance. Chances of one list add up to 1. */
export interface Outcome {
  readonly valueMinor: number;
  readonly chance: number;
}

/** Throws `PlanningError` unless the list is a distribution: at least one outcome, all finite, chances adding up to 1. */
export function assertDistribution(outcomes: readonly Outcome[]): void {
  const total = outcomes.reduce((sum, o) => sum + o.chance, 0);
  const finite = outcomes.every((o) => Number.isFinite(o.valueMinor) && o.chance >= 0);
  if (!finite || !(Math.abs(total - 1) < 1e-6))
    throw new PlanningError('bad-distribution', `chances must not be negative and must add up to 1, got ${total} over ${outcomes.length}`);
}

/** A thing that is sure. */
export const surely = (valueMinor: number): Outcome[] => [{ valueMinor, chance: 1 }];

/** Expected money. */
export const meanOf = (outcomes: readonly Outcome[]): number => outcomes.reduce((sum, o) => sum + o.valueMinor * o.chance, 0);

/** The smallest value that is not exceeded with a chance of at least `p`, 0 ≤ p ≤ 1. */
export const quantileOf = (outcomes: readonly Outcome[], p: number): number => quantilesOf(outcomes, [p])[0]!;

/** The same for several chances, given in rising order. */
export function quantilesOf(outcomes: readonly Outcome[], ps: readonly number[]): number[] {
  const sorted = outcomes.filter((o) => o.chance > 0).sort((a, b) => a.valueMinor - b.valueMinor);
  let below = 0;
  let next = 0;
  const found: number[] = [];
  for (const { valueMinor, chance } of sorted) {
    below += chance;
    while (next < ps.length && below >= ps[next]! - 1e-9) found[next++] = valueMinor;
  }
  while (next < ps.length) found[next++] = sorted.at(-1)!.valueMinor;
  return found;
}

/** The same distribution with outcomes of the same money put together. */
export function merged(outcomes: Iterable<Outcome>): Outcome[] {
  const chances = new Map<number, number>();
  for (const { valueMinor, chance } of outcomes) if (chance > 0) chances.set(valueMinor, (chances.get(valueMinor) ?? 0) + chance);
  return Array.from(chances, ([valueMinor, chance]) => ({ valueMinor, chance }));
}

/** Chance that it ends below `valueMinor`. */
export function chanceBelow(outcomes: readonly Outcome[], valueMinor: number): number {
  const chance = outcomes.reduce((sum, o) => (o.valueMinor < valueMinor ? sum + o.chance : sum), 0);
  return Math.min(1, Math.max(0, chance));
}

/** The same outcomes with so much more (or less) money in each. */
export const shiftedBy = (outcomes: readonly Outcome[], moreMinor: number): Outcome[] =>
  outcomes.map(({ valueMinor, chance }) => ({ valueMinor: valueMinor + moreMinor, chance }));
