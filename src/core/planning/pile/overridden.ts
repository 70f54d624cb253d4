import { copyOf } from './choice.ts';
import { make } from './changes.ts';
import { climb } from './climb.ts';
import { randomStream } from '../../numeric/index.ts';
import type { Base } from './worth-of-more.ts';
import { Standing } from './standing.ts';
import { trueAim } from './search.ts';
import type { Problem } from './problem.ts';
import type { Choice } from './choice.ts';
import { PlanningError } from '../planning-error.ts';

/** What the person decides otherwise: a unit opened or sold as it is, or the remedy of one assembly (null for none). */
export type Override =
  | { readonly item: string; readonly does: 'open' | 'as-is' }
  | { readonly item: string; readonly slot: string; readonly remedy: string | null };

export interface Overridden {
  /** What the best plan that keeps to the overrides earns less; never below nothing. */
  readonly regretMinor: number;
  readonly choice: Choice;
}

const SWAPS = 8;

/**
 * The plan that keeps to what the person decides, everything else following, and what that costs. It is always allowed; it may leave the
 * limits, which the law then says. Throws `PlanningError` for an item, slot or remedy that is not there.
 */
export function overridden(base: Base, overrides: readonly Override[]): Overridden {
  const { problem } = base;
  const units = new Set<number>();
  const things = new Set<number>();
  const standing = new Standing(problem, copyOf(base.choice), trueAim(problem, base.shortMinuteMinor), { units, things });
  for (const override of overrides) {
    if ('does' in override) {
      const at = unitOf(problem, override.item);
      make(standing, { set: 'open', at, to: override.does === 'open' ? 1 : 0 });
      units.add(at);
      continue;
    }
    const at = thingOf(problem, override.item, override.slot);
    const to = problem.things[at]!.options.findIndex(({ remedy }) => (remedy?.id ?? null) === override.remedy);
    if (to < 0) throw new PlanningError('bad-choice', `${override.item} has no remedy ${override.remedy} for its ${override.slot}`);
    make(standing, { set: 'option', at, to });
    things.add(at);
  }
  climb(
    standing,
    problem.models.map((_, m) => m),
    randomStream('overridden'),
    () => false,
    SWAPS,
  );
  return { regretMinor: Math.max(0, base.scoreMinor - standing.score()), choice: standing.choice };
}

function unitOf({ units }: Problem, item: string): number {
  const at = units.findIndex(({ id }) => id === item);
  if (at < 0) throw new PlanningError('bad-choice', `the pile has no unit ${item} that may be opened`);
  return at;
}

function thingOf({ things }: Problem, item: string, slot: string): number {
  const at = things.findIndex((thing) => thing.item === item && thing.assembly.slot === slot);
  if (at < 0) throw new PlanningError('bad-choice', `the pile has no ${slot} of ${item}`);
  return at;
}
