import { z } from 'zod';
import { Id } from '../events/index.ts';
import { Chance } from './measures.ts';

export const Hypothesis = z.object({
  faults: z.array(z.object({ id: Id, name: z.string(), block: Id })).meta({ description: 'Empty: nothing is wrong' }),
  unknown: z.boolean().meta({ description: 'True for "something that is not in the model"' }),
  chance: Chance,
});

export const BeliefView = z
  .object({
    hypotheses: z.array(Hypothesis).meta({ description: 'The likeliest sets of faults, most likely first' }),
    blocks: z.array(
      z.object({ id: Id, name: z.string(), chance: Chance, before: Chance.meta({ description: 'Before the last piece of evidence' }) }),
    ),
    none: Chance,
    unknown: Chance,
    odd: z
      .array(z.object({ event_id: z.string(), text: z.string(), chance: Chance }))
      .meta({ description: 'Evidence that the rest contradicts, with the chance of seeing it given the rest' }),
  })
  .meta({ id: 'Belief' });
export type BeliefView = z.infer<typeof BeliefView>;
