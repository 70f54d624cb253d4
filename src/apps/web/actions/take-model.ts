import type { ModelBundle, SharedFact } from '../../../bench/events/index.ts';
import { newFromBundle, takeFacts } from '../../../bench/grow/take-model.ts';
import { counted } from '../format/number.ts';
import type { Gesture } from './gesture.ts';

/** A bundle as a new model of that id. */
export const takeAsNewModel = (id: string, bundle: ModelBundle): Gesture => ({
  said: `${bundle.name} by ${bundle.author}`,
  drafts: newFromBundle(id, bundle),
});

/** Facts of a bundle into a model that grows here. */
export const takeIntoModel = (id: string, bundle: ModelBundle, facts: readonly SharedFact[]): Gesture => ({
  said: `${counted(facts.length, 'fact')} by ${bundle.author}`,
  drafts: [takeFacts(id, bundle, facts)],
});
