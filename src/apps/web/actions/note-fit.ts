import type { Body } from '../../../bench/events/index.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { Gesture } from './gesture.ts';

export type FitOutcome = Body<'model-fit-seen'>['outcome'];

const WORDS: Readonly<Record<FitOutcome, string>> = { fits: 'fits', bent: 'fits after bending or filing', 'does-not-fit': 'does not fit' };

/** What was tried in a slot of a model: that of another model, or a part of none. */
export function noteFit(
  { id, slots }: Pick<ModelFile, 'id' | 'slots'>,
  slot: string,
  what: { readonly modelId: string | null; readonly name: string },
  outcome: FitOutcome,
): Gesture {
  const tried = what.modelId === null ? { part: what.name } : { other_model_id: what.modelId };
  const place = slots.find((each) => each.id === slot)?.name ?? slot;
  return {
    said: `${place}: ${what.modelId === null ? what.name : `that of the ${what.name}`} ${WORDS[outcome]}`,
    drafts: [{ kind: 'model-fit-seen', body: { model_id: id, slot, outcome, ...tried } }],
  };
}
