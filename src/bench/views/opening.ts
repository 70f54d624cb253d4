import { z } from 'zod';
import { FindingKind, Id, Stage } from '../events/index.ts';
import { Caution } from '../models/schema.ts';
import { Chance } from './measures.ts';

export const OpeningStep = z
  .object({
    id: Id,
    name: z.string(),
    how: z.string(),
    tool: z.string().nullable().meta({ description: 'Null where the fingers do' }),
    side: z.enum(['front', 'back']).nullable().meta({ description: 'Side of the device that must be up; null where either will do' }),
    minutes: z.number().meta({ description: 'As this bench is expected to take' }),
    model_minutes: z.number().meta({ description: 'As the model says' }),
    times: z.number().int().meta({ description: 'How many own times that is learned from' }),
    risk: Chance.meta({ description: 'Chance that it damages something' }),
    cautions: z.array(Caution),
    changes_tool: z.boolean(),
    turns: z.boolean().meta({ description: 'The device has to be turned over for it' }),
    reaches: Stage.nullable(),
    fasteners: z.object({ set: Id, name: z.string(), drive: z.string(), length_mm: z.number(), count: z.number().int() }).nullable(),
    signs: z
      .array(z.object({ at: Id, at_name: z.string(), sees: FindingKind, name: z.string() }))
      .meta({ description: 'What to look for here, where, and what it is noted as; `name` is empty where the finding says it all' }),
    picture: z.string().nullable().meta({ description: 'Side of the photo of the model that shows it' }),
  })
  .meta({ id: 'OpeningStep' });
export type OpeningStep = z.infer<typeof OpeningStep>;

export const FastenersView = z
  .object({
    even: z.boolean().meta({ description: 'Nothing is on the mat, and as many went in as came out' }),
    whole: z.boolean().meta({ description: 'Each place that was opened holds what belongs there' }),
    sets: z.array(
      z.object({
        set: Id,
        name: z.string(),
        drive: z.string(),
        length_mm: z.number(),
        belongs: z.number().int(),
        out: z.number().int(),
        foreign: z.number().int(),
        back: z.number().int(),
        on_mat: z.number().int(),
      }),
    ),
    findings: z.array(z.object({ set: Id, sees: FindingKind, text: z.string() })),
    shopping: z.array(z.object({ set: Id, text: z.string(), count: z.number().int(), price_minor: z.number().int().nullable() })),
  })
  .meta({ id: 'Fasteners' });
export type FastenersView = z.infer<typeof FastenersView>;

export const OpeningView = z
  .object({
    item_id: Id,
    number: z.number().int().meta({ description: 'Its stock number' }),
    name: z.string(),
    model_id: Id,
    stage: Stage,
    goals: z.array(z.object({ goal: z.string(), name: z.string(), group: z.enum(['how-far', 'get-at', 'work', 'part']) })),
    goal: z.string().meta({ description: 'What the way leads to: "slot:display", "part:U7", "stage:closed"' }),
    reached: z.enum(['way', 'unknown-goal', 'no-step-leads-there', 'goal-out-of-reach']),
    steps: z.array(OpeningStep).meta({ description: 'What is left to do, in order' }),
    back: z.array(OpeningStep).meta({ description: 'How to close all that is then open' }),
    done: z.array(z.object({ id: Id, name: z.string() })).meta({ description: 'Steps that are done and not put back' }),
    minutes: z.number().meta({ description: 'Of what is left' }),
    tool_changes: z.number().int(),
    turnings: z.number().int(),
    risk: Chance,
    cost_minutes: z.number().meta({ description: 'Minutes, steps, changes, turnings and risk, all weighed in minutes' }),
    bound_minutes: z.number().meta({ description: 'No way costs less than this' }),
    exact: z.boolean().meta({ description: 'The order is proved to be the best' }),
    fasteners: FastenersView,
  })
  .meta({ id: 'Opening' });
export type OpeningView = z.infer<typeof OpeningView>;
