import type { Gesture } from './gesture.ts';

/** A unit that has left is judged by the newest version of its model from now on. */
export const judgeAgain = (itemId: string, modelId: string): Gesture => ({
  said: 'judged by the newest version',
  drafts: [{ kind: 'model-judged-again', body: { item_id: itemId, model_id: modelId } }],
});
