import type { Body, ModelBundle, SharedFact } from '../events/index.ts';
import { mergeModels, factsToTake } from './merge-models.ts';

export type TakeDraft =
  | { readonly kind: 'model-begun'; readonly body: Body<'model-begun'> }
  | { readonly kind: 'model-taken-in'; readonly body: Body<'model-taken-in'> };

/** The events that take a bundle in as a new model of that id. */
export function newFromBundle(id: string, bundle: ModelBundle): TakeDraft[] {
  const { name, revision, currency, from } = bundle;
  const facts = factsToTake(mergeModels([], bundle.facts, bundle.author), () => false);
  return [{ kind: 'model-begun', body: { model_id: id, name, revision, currency, from } }, takeFacts(id, bundle, facts)];
}

/** The event that takes facts of a bundle into a model that grows here already. */
export const takeFacts = (id: string, { author, licence }: ModelBundle, facts: readonly SharedFact[]): TakeDraft => ({
  kind: 'model-taken-in',
  body: { model_id: id, from_author: author, licence, facts: [...facts] },
});
