import type { Stage } from '../../../bench/events/index.ts';
import { STAGE_WORDS } from '../format/words.ts';
import type { Gesture } from './gesture.ts';

/** The unit is now open this far, or closed again. */
export const openUnit = (itemId: string, stage: Stage, minutes: number): Gesture => ({
  said: STAGE_WORDS[stage].toLowerCase(),
  drafts: [{ kind: 'opened-to', body: { item_id: itemId, stage, minutes } }],
});
