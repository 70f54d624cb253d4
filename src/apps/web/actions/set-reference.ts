import type { BoardCorners, BoardSide } from '../../../bench/events/index.ts';
import { SIDE_NAMES } from '../../../bench/eyes/picture-words.ts';
import type { Gesture } from './gesture.ts';

export interface ReferenceChoice {
  readonly modelId: string;
  readonly side: BoardSide;
  readonly photo: string;
  readonly use: boolean;
  readonly corners?: BoardCorners;
}

/** A photo of a good board is compared with from now on, or not any more; or its corners are marked. */
export const setReference = ({ modelId, side, photo, use, corners }: ReferenceChoice): Gesture => ({
  said: corners ? `corners of the ${SIDE_NAMES[side]}` : `${SIDE_NAMES[side]}: ${use ? 'one more reference' : 'one reference less'}`,
  drafts: [{ kind: 'reference-set', body: { model_id: modelId, side, photo, use, ...(corners ? { corners } : {}) } }],
});
