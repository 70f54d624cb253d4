import { workOf, type Weights } from './effort.ts';
import { isMet, namesIn, type Need, type Step } from './step.ts';

/**
 * Less than or equal to the work of any way to the goal: of each step its own work and the dearest of its needs, of a need
 * its cheapest alternative (the max-rule on AND/OR graphs; Bonet and Geffner, 2001). Infinite where the goal is out of reach.
 */
export function leastWay(steps: readonly Step[], goal: readonly Need[], done: ReadonlySet<string>, weights: Weights): number {
  const least = new Map<string, number>([...done].map((id) => [id, 0]));
  const ofNeed = (need: Need): number => (isMet(need, done) ? 0 : Math.min(...namesIn(need).map((id) => least.get(id) ?? Infinity)));
  const ofNeeds = (needs: readonly Need[]): number => Math.max(0, ...needs.map(ofNeed));
  for (let changed = true; changed;) {
    changed = false;
    for (const step of steps) {
      const now = workOf(step, weights) + ofNeeds(step.needs);
      if (now >= (least.get(step.id) ?? Infinity)) continue;
      least.set(step.id, now);
      changed = true;
    }
  }
  return ofNeeds(goal);
}
