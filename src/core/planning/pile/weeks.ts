import { inPool } from './choice.ts';
import type { Problem } from './problem.ts';
import type { Standing } from './standing.ts';

const DAYS_A_WEEK = 7;

/**
 * Expected minutes of work by week: what waits for no order at once, the rest from the week in which its order arrives; what does not
 * fit into a week goes to the next. Units are finished from the week in which the last order for their model is there.
 */
export function weeksOf(standing: Standing): { week: number; minutes: number }[] {
  const { problem, choice } = standing;
  const ready = arrivals(standing);
  const byWeek: number[] = [];
  const add = (week: number, minutes: number): void => void (byWeek[week] = (byWeek[week] ?? 0) + minutes);
  const lastOf = problem.models.map(() => 0);
  choice.open.forEach((open, u) => open && add(0, problem.units[u]!.openMinutes));
  problem.things.forEach((thing, t) => {
    if (!inPool(problem, choice, t)) return;
    const { minutes, needs } = thing.options[choice.option[t]!]!;
    const week = Math.max(0, ...needs.map(([part]) => ready[part]!));
    if (minutes > 0) add(week, minutes);
    lastOf[thing.model] = Math.max(lastOf[thing.model]!, week);
  });
  choice.fill.forEach((count, f) => {
    const { part, model, minutes } = problem.fills[f]!;
    if (count === 0) return;
    add(ready[part]!, count * minutes);
    lastOf[model] = Math.max(lastOf[model]!, ready[part]!);
  });
  problem.models.forEach(({ buildMinutes }, m) => add(lastOf[m]!, standing.worth(m).built * buildMinutes));
  return spreadOver(byWeek, problem.pile.limits.minutesAWeek);
}

/** By part: the week in which it is there. */
function arrivals(standing: Standing): number[] {
  const { parts, suppliers, pile }: Problem = standing.problem;
  const weeks = parts.map(() => 0);
  for (const { part, supplier } of standing.orders()?.lines ?? []) {
    const { id } = suppliers[supplier]!;
    weeks[part] = Math.floor(pile.suppliers.find((each) => each.id === id)!.days / DAYS_A_WEEK);
  }
  return weeks;
}

function spreadOver(byWeek: readonly number[], most: number): { week: number; minutes: number }[] {
  const weeks: { week: number; minutes: number }[] = [];
  let waiting = 0;
  for (let week = 0; week < byWeek.length || waiting > 1e-9; week++) {
    waiting += byWeek[week] ?? 0;
    const minutes = most > 0 ? Math.min(waiting, most) : waiting;
    weeks.push({ week: week + 1, minutes });
    waiting -= minutes;
  }
  return weeks;
}
