import { z } from 'zod';
import { Id, MeterMode, Stage } from '../events/index.ts';

/** A place and a way to measure it: a point of the model file, or of its circuit. */
export const PointView = z
  .object({
    id: Id,
    name: z.string(),
    mode: MeterMode,
    stage: Stage,
    side: z.enum(['front', 'back', 'both']),
    power: z.object({ id: z.string(), name: z.string() }).meta({ description: 'Power state in which it is measured' }),
    red: z.string().nullable().meta({ description: 'Net at the red lead; null without a circuit, and of a current' }),
    black: z.string().nullable(),
  })
  .meta({ id: 'Point' });
export type PointView = z.infer<typeof PointView>;

/** What the nets of a board carry at most; empty without a circuit. */
export const NetView = z
  .object({
    net: z.string(),
    current_a: z.number().meta({ description: 'Worst steady current on a good board, A; peaks are not in it' }),
    state: z.string().meta({ description: 'Power state in which it flows' }),
  })
  .meta({ id: 'Net' });
export type NetView = z.infer<typeof NetView>;
