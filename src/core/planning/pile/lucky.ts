import { luckOf } from './luck.ts';
import { hashText, type Problem } from './problem.ts';

/**
 * The pile as it would be planned by someone who knows what becomes of every remedy in one sampled outcome: every chance of a thing is 0 or 1.
 * A reference to measure plans against. What bought parts do stays open.
 */
export function luckyProblem(problem: Problem, seed: string, k: number): Problem {
  const seeded = hashText(seed);
  return {
    ...problem,
    things: problem.things.map((thing, t) => {
      const luck = luckOf(seeded, thing.luck, k);
      const options = thing.options.map((option) => ({ ...option, chance: luck < option.chance ? 1 : 0 }));
      return { ...thing, options, kind: `${thing.kind} ${t}` };
    }),
    units: problem.units.map((unit) => ({ ...unit, signature: unit.id })),
  };
}
