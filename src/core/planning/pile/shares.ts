import type { Choice } from './choice.ts';
import { finishOutcome } from './finish.ts';
import type { Problem } from './problem.ts';
import type { Standing } from './standing.ts';

export interface ItemShares {
  readonly finished: number;
  readonly donor: number;
}

const OUTCOMES = 200;

/** By item: in which share of outcomes its own originals are finished, and in which something of it goes into another unit. */
export function itemShares(standing: Standing, choice: Choice, seed: string): ReadonlyMap<string, ItemShares> {
  const { problem } = standing;
  const finished = new Map<string, number>();
  const donor = new Map<string, number>();
  const bump = (counts: Map<string, number>, item: string): void => void counts.set(item, (counts.get(item) ?? 0) + 1 / OUTCOMES);
  const left = problem.pile.limits.minutes - standing.minutesNow();
  for (let k = 0; k < OUTCOMES; k++) {
    const gave = new Set<string>();
    for (const unit of finishOutcome(problem, choice, left, seed, k).finished) {
      const bodyItem =
        unit.body === null
          ? mostOf(
              problem,
              unit.holds.map(({ thing }) => thing),
            )
          : problem.units[unit.body]!.id;
      if (bodyItem !== null) bump(finished, bodyItem);
      for (const { thing } of unit.holds)
        if (thing !== null && problem.things[thing]!.item !== bodyItem) gave.add(problem.things[thing]!.item);
    }
    for (const item of gave) bump(donor, item);
  }
  const items = new Set(problem.things.map(({ item }) => item));
  return new Map(
    [...items].map((item) => [item, { finished: Math.min(1, finished.get(item) ?? 0), donor: Math.min(1, donor.get(item) ?? 0) }]),
  );
}

/** The item that gave most of what a mixed unit holds. */
function mostOf({ things }: Problem, holds: readonly (number | null)[]): string | null {
  const counts = new Map<string, number>();
  for (const thing of holds)
    if (thing !== null && things[thing]!.unit >= 0) counts.set(things[thing]!.item, (counts.get(things[thing]!.item) ?? 0) + 1);
  let best: string | null = null;
  for (const [item, count] of counts) if (best === null || count > counts.get(best)!) best = item;
  return best;
}
