import { newModelDrafts, type NewModel } from '../../../bench/grow/new-model.ts';
import type { Gesture } from './gesture.ts';

/** A new model, with the photos of its board. */
export const beginModel = (id: string, model: NewModel): Gesture => ({ said: `model ${model.name}`, drafts: newModelDrafts(id, model) });
