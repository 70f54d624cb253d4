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
