import type { ModelRow } from '../../../bench/views/index.ts';

/** Models for a list of choices: "Tern, TN-10". */
export const modelOptions = (models: readonly ModelRow[]): { id: string; name: string }[] =>
  models.map((model) => ({ id: model.id, name: model.revision === '' ? model.name : `${model.name}, ${model.revision}` }));

/** The model for a thing that nobody has modelled: the one of blocks only; empty when there is no model at all. */
export const defaultModel = (models: readonly ModelRow[]): string => (models.find((model) => model.level === 0) ?? models[0])?.id ?? '';
