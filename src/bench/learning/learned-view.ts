import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedView } from '../views/index.ts';
import { learnedClaims } from './learned-claims.ts';
import { learnedModel } from './learned-model.ts';

/** Every number that this bench has learned, with the shipped one before it and the jobs that it rests on. */
export const learnedView = (state: Readonly<BenchState>, models: ReadonlyMap<string, Model>): LearnedView => ({
  currency: state.settings.currency,
  half_life_days: state.learning.halfLifeDays,
  numbers: [...[...models.values()].flatMap((model) => learnedModel(state, model).numbers), ...learnedClaims(state)],
});
