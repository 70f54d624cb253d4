import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { learnedClaims } from './learned-claims.ts';
import { learnedFaults } from './learned-faults.ts';
import { learnedRemedies } from './learned-remedies.ts';

/** Every number that this bench has learned, with the shipped one before it and the jobs that it rests on. */
export function learnedView(state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): LearnedView {
  const used = new Set([...state.items.values()].map(({ modelId }) => modelId));
  const own = [...models.values()].filter(({ file }) => used.has(file.id));
  return {
    half_life_days: state.learning.halfLifeDays,
    numbers: [
      ...own.flatMap((model) => learnedRemedies(state, model)),
      ...own.flatMap((model) => learnedFaults(state, model)),
      ...learnedClaims(state),
    ],
  };
}
