import { z } from 'zod';
import { Id } from '../events/index.ts';
import { Chance, Money, Why } from './measures.ts';

const Treatment = z.object({
  slot: Id,
  slot_name: z.string(),
  remedy: z.string().meta({ description: 'Name of the treatment, as a choice of the person names it' }),
  name: z.string(),
  works_now: Chance,
  works_after: Chance,
  minutes: z.number(),
});

export const PlanItem = z.object({
  item_id: Id,
  number: z.number().int(),
  name: z.string(),
  kind: z.enum(['unit', 'assembly']),
  does: z.enum(['open', 'as-is', 'keep', 'loose']).meta({
    description:
      '`open`: worked on, its assemblies go where they are worth most; `as-is`: sold as it is; `keep`: left alone; `loose`: in the drawer',
  }),
  headline: z.string(),
  treatments: z.array(Treatment),
  finished_chance: Chance.meta({ description: 'That it ends as a finished unit' }),
  donor_chance: Chance.meta({ description: 'That something of it goes into another unit' }),
  second: z
    .object({ name: z.string(), less_minor: Money.meta({ description: 'What the whole plan then earns less' }) })
    .nullable()
    .meta({ description: 'The next best way' }),
  why: Why,
  choices: z
    .array(z.object({ event_id: z.string(), said: z.string(), regret_minor: Money.nullable(), reason: z.string(), counts: z.boolean() }))
    .meta({ description: 'What the person decided for it' }),
  other_ways: z
    .array(
      z.object({
        does: z.enum(['open', 'as-is', 'keep']).nullable(),
        slot: z.string().nullable(),
        remedy: z.string().nullable(),
        name: z.string(),
      }),
    )
    .meta({ description: 'What could be decided instead' }),
});
export type PlanItem = z.infer<typeof PlanItem>;

export const PlanSpread = z.object({
  mean_minor: Money,
  mean_error_minor: Money.meta({ description: 'Half the width of a 95 % interval of the mean' }),
  worst_tenth_minor: Money.meta({ description: 'Mean of the worst tenth of outcomes' }),
  low_minor: Money.meta({ description: 'One time in twenty it is below this' }),
  high_minor: Money.meta({ description: 'One time in twenty it is above this' }),
  bars: z.object({ from_minor: Money, to_minor: Money, shares: z.array(Chance) }),
});

const Plan = z.object({
  seq: z.number().int().meta({ description: 'The place in the log that it was made at' }),
  items: z.array(PlanItem),
  fits: z.array(z.object({ part: Id, name: z.string(), model_id: Id, slot_name: z.string(), count: z.number().int() })),
  baskets: z.array(
    z.object({
      supplier: z.string(),
      days: z.number(),
      postage_minor: Money,
      lines: z.array(z.object({ part: Id, name: z.string(), count: z.number().int(), cost_minor: Money })),
      cost_minor: Money,
    }),
  ),
  weeks: z.array(z.object({ week: z.number().int(), minutes: z.number() })),
  minutes: z.number().meta({ description: 'Of work, expected' }),
  spend_minor: Money,
  built: z.number().meta({ description: 'Units finished, on average' }),
  profit: PlanSpread,
  alone_minor: Money.meta({ description: 'What repairing each unit by itself where that pays would earn' }),
  scrap_minor: Money.meta({ description: 'What selling everything as it is would earn' }),
  bound_minor: Money.nullable().meta({ description: 'About what no plan can earn more than; null where it was not reckoned' }),
  donors: z
    .array(z.object({ model_id: Id, model_name: z.string(), slot_name: z.string(), worth_minor: Money }))
    .meta({ description: 'What one more working assembly would add, most first' }),
  hour_minor: Money.meta({ description: 'What one hour more would add' }),
  more_money: z.object({ by_minor: Money, adds_minor: Money }).meta({ description: 'What so much more money for parts would add' }),
  keeps_choices: z.boolean(),
  regret_minor: Money.meta({ description: 'What the choices of the person cost together' }),
});

export const PlanView = z
  .object({
    currency: z.string(),
    stage: z.enum(['nothing', 'making', 'ready', 'failed', 'off']).meta({
      description: '`making`: `plan` is the last one, if there is one; `off`: this bench makes no plans',
    }),
    note: z.string(),
    plan: Plan.nullable(),
    changes: z.array(z.string()).meta({ description: 'What is different from the plan before, and why' }),
    broken: z.array(z.string()).meta({ description: 'Laws that a plan broke, which is then not shown' }),
    wishes: z.object({
      hours_a_week: z.number(),
      weeks: z.number().int(),
      money_minor: Money,
      risk_share: Chance,
      day_minor: Money,
      within_days: z.number().int(),
      lot_per_hour_minor: Money,
      lot_loss_chance: Chance,
      bidders: z.number().int(),
      error_share: Chance,
    }),
    suppliers: z.array(
      z.object({
        name: z.string(),
        postage_minor: Money,
        days: z.number().int(),
        offers: z.array(z.object({ part: Id, name: z.string(), unit_minor: Money, least: z.number().int() })),
      }),
    ),
    parts: z.array(z.object({ id: Id, name: z.string() })).meta({ description: 'Parts that a supplier may be asked for' }),
    assumed: z.array(z.string()),
  })
  .meta({ id: 'Plan' });
export type PlanView = z.infer<typeof PlanView>;

/** A choice to be asked about before it is made. */
export const ChoiceQuestion = z.object({
  item_id: Id,
  does: z.enum(['open', 'as-is', 'keep']).optional(),
  slot: Id.optional(),
  remedy: z.string().max(400).nullable().optional(),
});
export type ChoiceQuestion = z.infer<typeof ChoiceQuestion>;
