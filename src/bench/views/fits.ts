import { z } from 'zod';
import { Id } from '../events/index.ts';

const Times = z.number().int().min(0);

const FitSeenLine = z
  .object({
    model_id: Id.nullable().meta({ description: 'Model whose assembly it was; null for a part of no model' }),
    name: z.string(),
    said: z.boolean().meta({ description: 'The file of the model says that it fits' }),
    fits: Times.meta({ description: 'Times that it went in as it is, transplants that sit there now counted in' }),
    bent: Times.meta({ description: 'Times that it went in after bending or filing' }),
    fails: Times.meta({ description: 'Times that it did not fit' }),
  })
  .meta({ id: 'FitSeenLine' });

/** Which parts and assemblies of other models go into the slots of a model, from what was said and what came of it. */
export const FitsSeenView = z
  .object({
    model_id: Id,
    slots: z.array(z.object({ slot: Id, name: z.string(), lines: z.array(FitSeenLine) })),
  })
  .meta({ id: 'FitsSeen' });
export type FitsSeenView = z.infer<typeof FitsSeenView>;
