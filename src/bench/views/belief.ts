import { z } from 'zod';
import { Id, MeterMode } from '../events/index.ts';
import { Chance } from './measures.ts';

/** A fault of the model, or of its circuit: then its parts are named, and its name may hold colons. */
export const FaultName = z.object({
  id: z.string(),
  name: z.string(),
  block: z.string(),
  refs: z.array(z.string()).meta({ description: 'Parts of the placement concerned, the one to work on first; empty without a circuit' }),
});
export type FaultName = z.infer<typeof FaultName>;

export const Hypothesis = z.object({
  faults: z.array(FaultName).meta({ description: 'Empty: nothing is wrong' }),
  unknown: z.boolean().meta({ description: 'True for "something that is not in the model"' }),
  chance: Chance.meta({ description: 'Of these faults, or of others in their place that nothing tells apart from them' }),
  alike: z.array(FaultName).meta({ description: 'Faults that no check tells apart from one of these; the chance is of all together' }),
});

/** Faults that no check can tell apart. */
export const FaultGroupView = z.object({
  faults: z.array(FaultName).meta({ description: 'Likeliest first, two or more' }),
  chance: Chance.meta({ description: 'That one of them is there' }),
  like_healthy: z.boolean().meta({ description: 'A board with one of them measures and works like a good one' }),
  remedy: z
    .object({ id: Id, name: z.string() })
    .nullable()
    .meta({ description: 'The remedy that serves all of them; null when none does' }),
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
    groups: z.array(FaultGroupView).meta({ description: 'Likeliest first; only with a circuit' }),
    repeat: z
      .object({ event_id: z.string(), point: Id, name: z.string(), mode: MeterMode, text: z.string(), slip: Chance })
      .nullable()
      .meta({
        description: 'The reading that disagrees most with the rest, to be taken once more: `slip` is the chance that it says nothing',
      }),
    moved: z
      .object({
        event_id: z.string().meta({ description: 'The last piece of evidence' }),
        text: z.string().meta({ description: 'It, in words' }),
        faults: z.array(FaultName.extend({ before: Chance, chance: Chance })).meta({ description: 'Faults that it moved most' }),
      })
      .nullable()
      .meta({ description: 'What changed last, and by what; null before any evidence' }),
    knowledge: z
      .object({ done: z.number().int(), rows: z.number().int() })
      .nullable()
      .meta({ description: 'Boards that are simulated, of all that will be; null where nothing is known of the circuit' }),
  })
  .meta({ id: 'Belief' });
export type BeliefView = z.infer<typeof BeliefView>;
