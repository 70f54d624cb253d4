import type { Change } from '../grow/editor.ts';
import { toBody } from '../grow/marked-part.ts';
import type { Draft, Gesture } from './gesture.ts';

/** A step on the picture of a board: parts that are gone, and parts that are new or otherwise. */
export function markParts(modelId: string, { said, before, after }: Change): Gesture {
  const there = new Set(after.map(({ ref }) => ref));
  const gone = before.flatMap(({ ref }) => (there.has(ref) ? [] : [ref]));
  const drafts: Draft[] = [];
  if (gone.length > 0) drafts.push({ kind: 'model-parts-removed', body: { model_id: modelId, refs: gone } });
  if (after.length > 0) drafts.push({ kind: 'model-parts-placed', body: { model_id: modelId, parts: after.map(toBody) } });
  return { said, drafts };
}
