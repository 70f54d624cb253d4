import { after, changeover, workOf, type Stance, type Weights } from './effort.ts';
import { isMet, namesIn, type Need, type Step } from './step.ts';

/**
 * A good order to the goal, found at once and not proved best: of alternatives the one that is cheapest by itself, then
 * always the readied step whose tool and side serve most others. All of `steps` must be reachable.
 */
export function quickOrder(
  steps: readonly Step[],
  goal: readonly Need[],
  done: ReadonlySet<string>,
  start: Stance,
  weights: Weights,
): Step[] {
  const chosen = cheapestWay(steps, goal, done, weights);
  const order: Step[] = [];
  const now = new Set(done);
  let stance = start;
  for (let left = steps.filter(({ id }) => chosen.has(id)); left.length > 0;) {
    const ready = left.filter(({ needs }) => needs.every((need) => isMet(need, now)));
    const next = bestOf(ready, left, stance, weights);
    order.push(next);
    now.add(next.id);
    stance = after(stance, next);
    left = left.filter((step) => step !== next);
  }
  return order;
}

/** Of the readied steps the one that costs least to get ready for; of equal ones that whose tool and side most of the others ask for. */
function bestOf(ready: readonly Step[], left: readonly Step[], stance: Stance, weights: Weights): Step {
  const alike = (step: Step): number => ready.filter((other) => other.tool === step.tool && other.side === step.side).length;
  const waiting = (step: Step): number => left.filter((other) => other.tool === step.tool).length - alike(step);
  return [...ready].sort(
    (a, b) => changeover(stance, a, weights) - changeover(stance, b, weights) || waiting(a) - waiting(b) || alike(b) - alike(a),
  )[0]!;
}

/**
 * Steps that suffice for the goal. Knuth's extension of Dijkstra's rule to AND/OR graphs (D. E. Knuth, 1977), with the
 * sum over the needs as the cost of a step, so that what two needs share is counted twice: a rule of thumb, not an optimum.
 */
function cheapestWay(steps: readonly Step[], goal: readonly Need[], done: ReadonlySet<string>, weights: Weights): Set<string> {
  const cost = new Map<string, number>([...done].map((id) => [id, 0]));
  const rank = new Map<string, number>([...done].map((id) => [id, -1]));
  const costOf = (need: Need): number => Math.min(...namesIn(need).map((id) => cost.get(id) ?? Infinity));
  while (!goal.every((need) => costOf(need) < Infinity)) {
    const open = steps
      .filter(({ id }) => !cost.has(id))
      .map((step) => ({ id: step.id, total: step.needs.reduce((sum, need) => sum + costOf(need), workOf(step, weights)) }));
    const next = open.reduce((best, each) => (each.total < best.total ? each : best));
    rank.set(next.id, rank.size);
    cost.set(next.id, next.total);
  }
  const byId = new Map(steps.map((step) => [step.id, step]));
  const cheapest = (need: Need, before: number): string =>
    namesIn(need)
      .filter((id) => (rank.get(id) ?? Infinity) < before)
      .reduce((best, id) => (cost.get(id)! < cost.get(best)! ? id : best));
  const chosen = new Set<string>();
  const choose = (needs: readonly Need[], before: number): void => {
    for (const need of needs) {
      if (isMet(need, done)) continue;
      const id = cheapest(need, before);
      if (chosen.has(id)) continue;
      chosen.add(id);
      choose(byId.get(id)!.needs, rank.get(id)!);
    }
  };
  choose(goal, Infinity);
  return chosen;
}
