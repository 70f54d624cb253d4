import { randomStream } from '../../numeric/index.ts';
import { checkpoint, make, type Change } from './changes.ts';
import { copyOf, inPool } from './choice.ts';
import { climb, openWell } from './climb.ts';
import type { Second } from './plan.ts';
import { Standing } from './standing.ts';

/** Up to so many units the rest of the model is planned anew around each other way; beyond, only the unit itself is. */
const REPLANNED = 120;

export interface Seconds {
  /** The next best way to treat it. */
  readonly best: Second;
  /** For a unit: what to do otherwise with it as a whole. */
  readonly whole: Second | null;
}

/** By item: the next best way to treat it and how much less the plan then earns, everything else of its model following. */
export function secondBests(standing: Standing): ReadonlyMap<string, Seconds> {
  const { problem, choice } = standing;
  const score = standing.score();
  const seconds = new Map<string, Seconds>();
  const offer = (item: string, second: Second): void => {
    const { best, whole = null } = seconds.get(item) ?? {};
    if (second.lessMinor < (best?.lessMinor ?? Infinity)) seconds.set(item, { best: second, whole });
  };
  problem.units.forEach((unit, u) => {
    const kind = choice.open[u] === 1 ? 'as-is' : 'open';
    const second: Second = { kind, lessMinor: Math.max(0, score - toggled(standing, u)) };
    seconds.set(unit.id, { best: second, whole: second });
  });
  problem.things.forEach((thing, t) => {
    if (thing.options.length < 2 || !inPool(problem, choice, t)) return;
    const now = choice.option[t]!;
    thing.options.forEach(({ remedy }, o) => {
      if (o === now) return;
      const restore = checkpoint(standing, [{ set: 'option', at: t, to: o }]);
      make(standing, { set: 'option', at: t, to: o });
      const lessMinor = Math.max(0, score - standing.score());
      restore();
      offer(thing.item, { kind: 'remedy', slot: thing.assembly.slot, remedy: remedy?.id ?? null, lessMinor });
    });
  });
  return seconds;
}

/** The score if a unit were opened that is not, or the other way round. */
function toggled(standing: Standing, u: number): number {
  const { problem, choice, aim } = standing;
  const { model, things } = problem.units[u]!;
  if (problem.units.length > REPLANNED) {
    const touched: Change[] = [...things.map((at) => ({ set: 'option' as const, at, to: 0 })), { set: 'open', at: u, to: 0 }];
    const restore = checkpoint(standing, touched);
    toggle(standing, u);
    const score = standing.score();
    restore();
    return score;
  }
  const other = new Standing(problem, copyOf(choice), aim);
  toggle(other, u);
  const fixed = new Standing(problem, other.choice, aim, { units: new Set([u]), things: new Set() });
  return climb(fixed, [model], randomStream(`second ${u}`), () => false, 0);
}

function toggle(standing: Standing, u: number): void {
  if (standing.choice.open[u] === 1) make(standing, { set: 'open', at: u, to: 0 });
  else openWell(standing, [], u, -Infinity);
}
