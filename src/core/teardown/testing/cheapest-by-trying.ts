import { after, changeover, EMPTY_HANDS, workOf, type Stance, type Weights } from '../effort.ts';
import { isMet, type Need, type Step } from '../step.ts';

/** The least cost over all orders of all subsets of the steps that reach the goal, each tried to its end; infinite when none does. */
export function cheapestByTrying(steps: readonly Step[], goal: readonly Need[], weights: Weights): number {
  const tryFrom = (done: ReadonlySet<string>, stance: Stance): number => {
    if (goal.every((need) => isMet(need, done))) return 0;
    let least = Infinity;
    for (const step of steps) {
      if (done.has(step.id) || !step.needs.every((need) => isMet(need, done))) continue;
      const rest = tryFrom(new Set([...done, step.id]), after(stance, step));
      least = Math.min(least, workOf(step, weights) + changeover(stance, step, weights) + rest);
    }
    return least;
  };
  return tryFrom(new Set(), EMPTY_HANDS);
}
