import { z } from 'zod';
import { Id } from '../events/index.ts';

export const LearnedView = z
  .object({
    currency: z.string().meta({ description: 'Of numbers in minor units' }),
    half_life_days: z.number().nullable(),
    numbers: z.array(
      z.object({
        id: z.string().meta({ description: 'Name to reset it by' }),
        about: z.enum(['remedy-chance', 'remedy-time', 'fault-rate', 'honesty', 'reference', 'noise', 'price', 'price-for-parts']),
        unit: z.enum(['share', 'min', 'V', 'Ω', 'A', 'minor']),
        model_id: Id.nullable(),
        name: z.string(),
        before: z.number().meta({ description: 'As shipped' }),
        mean: z.number(),
        low: z.number().meta({ description: 'Lower limit of nine in ten' }),
        high: z.number(),
        jobs: z.array(z.object({ event_id: z.string(), item_id: Id.nullable(), at: z.string(), text: z.string(), weight: z.number() })),
        reset_at: z.string().nullable(),
      }),
    ),
  })
  .meta({ id: 'Learned' });
export type LearnedView = z.infer<typeof LearnedView>;
