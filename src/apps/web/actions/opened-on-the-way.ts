import type { Stage } from '../../../bench/events/index.ts';
import { isDeeper } from '../format/words.ts';
import type { Draft } from './gesture.ts';

/** What was done at a stage says that the unit is open that far: one event if it was not known to be, else none. */
export const openedOnTheWay = (itemId: string, now: Stage, needed: Stage): Draft[] =>
  isDeeper(needed, now) ? [{ kind: 'opened-to', body: { item_id: itemId, stage: needed } }] : [];
