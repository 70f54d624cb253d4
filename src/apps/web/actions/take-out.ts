import type { Gesture } from './gesture.ts';
import { takeOutDrafts, type TakeOut } from './transplant.ts';

/** What the slot holds comes out and goes into the drawer, with its share of the cost. */
export const takeOut = (move: TakeOut): Gesture => ({ said: `${move.slotName} out to the drawer`, drafts: takeOutDrafts(move) });
