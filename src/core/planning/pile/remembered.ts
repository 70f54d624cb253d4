import { idleChoice, type Choice } from './choice.ts';
import type { PilePlan } from './plan.ts';
import type { Problem } from './problem.ts';

/** The choice that a plan describes, in a pile that may have changed since: what is gone is left out, what is new is not touched. */
export function choiceFrom(problem: Problem, plan: Pick<PilePlan, 'items' | 'fits'>): Choice {
  const choice = idleChoice(problem);
  const byItem = new Map(plan.items.map((item) => [item.item, item]));
  problem.units.forEach(({ id }, u) => {
    if (byItem.get(id)?.does === 'open') choice.open[u] = 1;
  });
  problem.things.forEach(({ item, assembly, options }, t) => {
    const wanted = byItem.get(item)?.remedies[assembly.slot];
    choice.option[t] = Math.max(
      0,
      options.findIndex(({ remedy }) => remedy !== null && remedy.id === wanted),
    );
  });
  problem.fills.forEach(({ part, model, slot }, f) => {
    const { id, slots } = problem.models[model]!;
    const fit = plan.fits.find((each) => each.part === problem.parts[part]!.id && each.model === id && each.slot === slots[slot]!);
    choice.fill[f] = fit?.count ?? 0;
  });
  return choice;
}
