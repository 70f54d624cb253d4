import type { Body } from '../../../bench/events/index.ts';
import { counted } from '../format/number.ts';
import type { Gesture } from './gesture.ts';

export type Side = Body<'photo-taken'>['side'];

/** Photos that the bench has taken in, by hash, now belong to the unit. */
export const addPhotos = (itemId: string, hashes: readonly string[], side: Side): Gesture => ({
  said: counted(hashes.length, 'photo'),
  drafts: hashes.map((photo) => ({ kind: 'photo-taken', body: { item_id: itemId, photo, side } })),
});
