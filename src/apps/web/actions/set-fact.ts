import type { FactSection } from '../../../bench/events/index.ts';
import type { Gesture } from './gesture.ts';

/** One place of a model's file. */
export interface FactAnswer {
  readonly section: FactSection;
  readonly id: string;
  readonly field?: string;
  /** Null takes it away. */
  readonly value: unknown;
}

/** Places of a model that the person types. */
export const setFacts = (modelId: string, said: string, facts: readonly FactAnswer[]): Gesture => ({
  said,
  drafts: facts.map((fact) => ({ kind: 'model-fact-set', body: { model_id: modelId, source: 'typed', ...fact } })),
});
