import { isMet, type Need, type Step } from './step.ts';
import { TeardownError } from './teardown-error.ts';

/** The law of an order: each step once, each after what it needs, and the goal met at the end. Throws `TeardownError` where it does not hold. */
export function assertOrder(order: readonly Step[], goal: readonly Need[], done: ReadonlySet<string> = new Set()): void {
  const now = new Set(done);
  for (const step of order) {
    if (now.has(step.id)) throw new TeardownError('not-an-order', `"${step.id}" is done twice`);
    if (!step.needs.every((need) => isMet(need, now))) throw new TeardownError('not-an-order', `"${step.id}" comes before what it needs`);
    now.add(step.id);
  }
  if (!goal.every((need) => isMet(need, now))) throw new TeardownError('not-an-order', 'the goal is not met at the end');
}
