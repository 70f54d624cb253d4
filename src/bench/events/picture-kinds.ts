import { z } from 'zod';
import { Id, PhotoHash, Share, Text } from './words.ts';

/** Sides of a board that photos are compared by. */
export const BoardSide = z.enum(['board-front', 'board-back']);
export type BoardSide = z.infer<typeof BoardSide>;

/** A place on a photo as shares of its width; a tall photo reaches down further than 1. */
const Spot = z.tuple([z.number().min(-1).max(5), z.number().min(-1).max(5)]);

/** The corners of a board on a photo of one side. */
export const BoardCorners = z.array(Spot).length(4, 'must be four corners').meta({
  description:
    'Corners of the board as seen, shares of the width of the photo from its upper left corner: lower left, lower right, upper right, upper left',
});
export type BoardCorners = z.infer<typeof BoardCorners>;

/** What the eyes call a difference. */
export const DifferenceName = z.enum(['missing', 'added', 'moved', 'stain', 'damaged']);

/** Kinds of events about photos that are compared. */
export const PICTURE_BODIES = {
  'reference-set': z.object({
    model_id: Id,
    side: BoardSide,
    photo: z
      .union([PhotoHash, z.literal('shipped')])
      .meta({ description: 'Photo of a known-good board; `shipped`: that of the model itself' }),
    use: z.boolean().meta({ description: 'False: it is not compared with any more' }),
    corners: BoardCorners.optional(),
  }),
  'difference-judged': z.object({
    item_id: Id,
    side: BoardSide,
    photo: PhotoHash.meta({ description: 'Photo of this item on which it is seen' }),
    outline: z
      .array(Spot)
      .min(3, 'needs three corners or more')
      .max(200, 'must have at most 200 corners')
      .meta({ description: 'Around it, shares of the width of that photo' }),
    shows: DifferenceName,
    verdict: z
      .enum(['real', 'normal', 'not-sure'])
      .meta({ description: '"normal": good boards of this model may look like that; the next comparison knows it' }),
    chance: Share.optional().meta({ description: 'Chance that was given for it to be real' }),
    part: Id.optional(),
    text: Text.default(''),
  }),
} as const;
