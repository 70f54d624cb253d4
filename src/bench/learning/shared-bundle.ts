import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import type { LearnedBundle } from '../views/index.ts';
import { learnedModel } from './learned-model.ts';

/**
 * What this bench has learned of a model from its own jobs, to be given away: rates, chances, minutes and readings. Nothing of money, of people or of days is in it, no
 * photo, and nothing that was taken in from others.
 */
export const sharedBundle = (state: Readonly<BenchState>, model: Model): LearnedBundle => ({
  format: 'salvor-learned',
  version: 1,
  model_id: model.file.id,
  model_name: model.file.name,
  numbers: [...learnedModel(state, model).own],
});
