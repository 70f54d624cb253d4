import { isMet, namesIn, type Need, type Step } from './step.ts';

/** All steps that can ever be done, in an order in which they can, when those of `without` never are. */
export function reachable(steps: readonly Step[], start: ReadonlySet<string>, without?: string): Set<string> {
  const done = new Set(start);
  for (let before = -1; before !== done.size;) {
    before = done.size;
    for (const { id, needs } of steps) if (id !== without && needs.every((need) => isMet(need, done))) done.add(id);
  }
  return done;
}

/** The steps that some way to the goal could use: those it names, those they name, and so on; what is done is left out. */
export function contributing(steps: ReadonlyMap<string, Step>, goal: readonly Need[], done: ReadonlySet<string>): Step[] {
  const wanted = new Set<string>();
  const open = goal.filter((need) => !isMet(need, done)).flatMap(namesIn);
  while (open.length > 0) {
    const id = open.pop()!;
    if (wanted.has(id) || done.has(id)) continue;
    wanted.add(id);
    open.push(
      ...steps
        .get(id)!
        .needs.filter((need) => !isMet(need, done))
        .flatMap(namesIn),
    );
  }
  const can = reachable([...steps.values()], done);
  return [...steps.values()].filter(({ id }) => wanted.has(id) && can.has(id));
}

/** The steps without which the goal cannot be reached: every way there uses them. */
export function indispensable(steps: readonly Step[], goal: readonly Need[], done: ReadonlySet<string>): Set<string> {
  const needed = steps.filter(({ id }) => {
    const can = reachable(steps, done, id);
    return !goal.every((need) => isMet(need, can));
  });
  return new Set(needed.map(({ id }) => id));
}
