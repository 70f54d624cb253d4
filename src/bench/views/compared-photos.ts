import { z } from 'zod';
import { BoardSide, Id } from '../events/index.ts';
import { Problem } from './bench.ts';

const Hash = z.string().regex(/^[0-9a-f]{64}$/, 'must be the SHA-256 of a photo in hexadecimal');
const Spots = z.array(z.tuple([z.number(), z.number()]));

/** Which photo of which unit is to be compared. */
export const PhotoQuestion = z
  .object({ item_id: Id, photo: Hash.meta({ description: 'A photo of the item' }), side: BoardSide })
  .meta({ id: 'PhotoQuestion' });
export type PhotoQuestion = z.output<typeof PhotoQuestion>;

const PoseView = z.object({
  turn_deg: z.number().meta({ description: 'Against the clock as seen' }),
  tilt_right_deg: z.number().meta({ description: 'Above zero: the right side was farther away' }),
  tilt_down_deg: z.number().meta({ description: 'Above zero: the lower side was farther away' }),
  tilt_deg: z.number(),
  scale: z.number().meta({ description: 'Size of the board against the reference' }),
});
export type PoseView = z.infer<typeof PoseView>;

export const DifferenceView = z
  .object({
    rank: z.number().int().meta({ description: '1 for the likeliest' }),
    outline: Spots.meta({ description: 'px of the frame' }),
    outline_photo: Spots.meta({ description: 'Shares of the width of the compared photo' }),
    outline_mm: Spots.nullable().meta({ description: 'mm of the board, where its corners are known on the reference' }),
    shows: z.enum(['missing', 'added', 'moved', 'stain', 'damaged']),
    chance: z.number(),
    part: z.string().nullable(),
    block: z.string().nullable().meta({ description: 'Block of that part' }),
    verdict: z.enum(['real', 'normal', 'not-sure']).nullable().meta({ description: 'What was said of it' }),
  })
  .meta({ id: 'Difference' });
export type DifferenceView = z.infer<typeof DifferenceView>;

export const BlindZone = z
  .object({
    reason: z.enum(['not-seen', 'glare', 'does-not-fit']),
    squares: z
      .array(z.tuple([z.number(), z.number(), z.number(), z.number()]))
      .meta({ description: 'Left, top, right, bottom; px of the frame' }),
    parts: z.array(z.string()),
  })
  .meta({ id: 'BlindZone', description: 'Where nothing was compared, so that the person has to look' });
export type BlindZone = z.infer<typeof BlindZone>;

const Result = z.object({
  width_px: z.number().int().meta({ description: 'Of the frame: the first reference as it was compared' }),
  height_px: z.number().int(),
  reference_url: z.string(),
  board_map: z.array(z.number()).length(9).nullable().meta({
    description: 'Plane projective map from px of the frame to mm of the board, row by row; null where the corners are not known',
  }),
  laid_url: z.string().meta({ description: 'The compared photo as it lies on the reference' }),
  references: z.number().int().meta({ description: 'Photos of good boards that were compared with' }),
  variations: z.number().int().meta({ description: 'Known variations that were taken into account' }),
  differences: z.array(DifferenceView),
  zones: z.array(BlindZone),
  pose: PoseView,
  parallax_px: z.number().nullable().meta({
    description: 'How far the top of a part of 3 mm is displaced by the lean, px of the frame; null where the scale is not known',
  }),
  advice: z.array(z.string()),
});

export const ComparisonView = z
  .object({
    key: Hash,
    question: PhotoQuestion,
    stage: z.enum(['waiting', 'working', 'ready', 'refused', 'stopped', 'failed']),
    step: z.string().nullable(),
    share: z.number(),
    problem: Problem.nullable().meta({ description: 'Why the photos cannot be compared, and what to do' }),
    result: Result.nullable(),
  })
  .meta({ id: 'Comparison' });
export type ComparisonView = z.infer<typeof ComparisonView>;

/** A photo that is to be judged as it was taken. */
export const JudgeQuestion = z.object({ photo: Hash, model_id: Id, side: BoardSide }).meta({ id: 'JudgeQuestion' });
export type JudgeQuestion = z.output<typeof JudgeQuestion>;

export const JudgementView = z
  .object({
    sharpness: z.number(),
    brightness: z.number(),
    blinded_share: z.number(),
    troubles: z.array(z.enum(['blurred', 'too-dark', 'too-bright', 'glare'])),
    pose: PoseView.nullable().meta({ description: 'Null where there is no reference, or the photo does not lie on it' }),
    parallax_px: z.number().nullable(),
    problem: Problem.nullable().meta({ description: 'Why it does not lie on the reference' }),
    verdict: z.enum(['good', 'retake', 'alone']).meta({ description: '`alone`: good by itself, but there is nothing to lay it on' }),
    advice: z.array(z.string()),
  })
  .meta({ id: 'PhotoJudgement' });
export type JudgementView = z.infer<typeof JudgementView>;

export const ReferencesView = z
  .object({
    model_id: Id,
    sides: z.array(
      z.object({
        side: BoardSide,
        references: z.array(
          z.object({
            photo: z.string().meta({ description: 'Its hash, or `shipped`' }),
            url: z.string(),
            corners: Spots.nullable(),
          }),
        ),
      }),
    ),
  })
  .meta({ id: 'References' });
export type ReferencesView = z.infer<typeof ReferencesView>;
