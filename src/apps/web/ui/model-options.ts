import type { ModelRow } from '../../../bench/views/index.ts';

/** "Tern, TN-10"; the revision is not said twice where the name holds it already. */
export const modelTitle = ({ name, revision }: { readonly name: string; readonly revision: string }): string =>
  revision === '' || name.includes(revision) ? name : `${name}, ${revision}`;

/** Models for a list of choices. */
export const modelOptions = (models: readonly ModelRow[]): { id: string; name: string }[] =>
  models.map((model) => ({ id: model.id, name: modelTitle(model) }));

/** The model for a thing that nobody has modelled: the one of blocks only; empty when there is no model at all. */
export const defaultModel = (models: readonly ModelRow[]): string => (models.find((model) => model.level === 0) ?? models[0])?.id ?? '';
