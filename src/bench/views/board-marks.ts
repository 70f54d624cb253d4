import { z } from 'zod';
import { Id, MarkedPart } from '../events/index.ts';

const Pixel = z.tuple([z.number(), z.number()]);

const MarkedPhoto = z
  .object({
    photo: z.string().meta({ description: 'SHA-256 of the photo' }),
    size: Pixel.nullable().meta({ description: 'Size of the picture on which it was marked, px; null while nothing is marked' }),
    scale: z.object({ from: Pixel, to: Pixel, mm: z.number() }).nullable(),
    corners: z.array(Pixel).meta({ description: 'Lower left, lower right and upper left corner of the board, px' }),
    mirror: z.array(z.object({ front: Pixel, back: Pixel })).meta({ description: 'The same holes on both pictures, px' }),
  })
  .meta({ id: 'MarkedPhoto' });

/** What was marked on the picture of a board: photos and how they lie, parts, and what was found joined. */
export const BoardMarks = z
  .object({
    model_id: Id,
    grows: z.boolean().meta({ description: 'False for a model of the folder: nothing is marked on it here' }),
    seq: z.number().int().meta({ description: 'Place of the last event of the log that is in it' }),
    front: MarkedPhoto.nullable(),
    back: MarkedPhoto.nullable(),
    parts: z.array(MarkedPart),
    joins: z.array(z.object({ pins: z.array(z.string()), joined: z.boolean() })),
    steps: z
      .array(z.object({ step: Id, photo: z.string().nullable(), places: z.array(Pixel) }))
      .meta({ description: 'Recorded steps of opening that a photo shows, with the places of what is done, px' }),
    names: z.array(z.object({ pin: z.string(), name: z.string() })),
  })
  .meta({ id: 'BoardMarks' });
export type BoardMarks = z.infer<typeof BoardMarks>;
