import { z } from 'zod';
import { Id, SharedNumber } from '../events/index.ts';

export const LearnedBundle = z
  .object({
    format: z.literal('salvor-learned'),
    version: z.literal(1),
    model_id: Id,
    model_name: z.string(),
    numbers: z.array(SharedNumber),
  })
  .meta({ id: 'LearnedBundle' });
export type LearnedBundle = z.infer<typeof LearnedBundle>;
