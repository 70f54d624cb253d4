import { z } from 'zod';
import { Id, Stage } from '../events/index.ts';
import { Caution } from '../models/schema.ts';
import { Chance, Money, Why } from './measures.ts';

/** Where one lead of the meter goes. */
export const LeadView = z.object({
  net: z.string().meta({ description: 'Net of the circuit; "0" is ground' }),
  name: z.string().meta({ description: 'The net in words' }),
  pads: z
    .array(z.object({ ref: z.string(), pin: z.number().int(), x_mm: z.number(), y_mm: z.number(), side: z.enum(['front', 'back']) }))
    .meta({ description: 'Pads of that net, the handiest first; mm from the lower left corner of the front' }),
});
export type LeadView = z.infer<typeof LeadView>;

/** A measurement on the circuit of a board: where the leads go, and how the board is fed. */
export const ProbeView = z.object({
  point: Id.meta({ description: 'What the reading is recorded of' }),
  red: LeadView.nullable().meta({ description: 'Null of a current' }),
  black: LeadView.nullable(),
  supply: z.string().nullable().meta({ description: 'Of a current: the supply that it is measured at' }),
  power: z.object({ id: z.string(), name: z.string() }).meta({ description: 'Power state in which it is read' }),
  set: z.array(z.string()).meta({ description: 'What to set for it, in words: side, power, keys held, meter; empty when all stands so' }),
});
export type ProbeView = z.infer<typeof ProbeView>;

export const CheckView = z
  .object({
    id: Id,
    name: z.string(),
    kind: z.enum(['try', 'look', 'measure']),
    target: Id.meta({ description: 'Function, block or point' }),
    with: z.array(Id),
    mode: z.string().nullable().meta({ description: 'Meter mode of a measurement' }),
    reference: z.string().nullable().meta({ description: 'What a good board shows, in words' }),
    minutes: z.number().meta({ description: 'Including the way to get at it' }),
    stage: Stage,
    saving_minor: Money.meta({ description: 'Expected saving of knowing the outcome, before the minutes are paid' }),
    saving_per_minute_minor: z.number(),
    bits: z.number().meta({ description: 'Expected information' }),
    outcomes: z.array(
      z.object({
        outcome: z.string(),
        chance: Chance,
        means: z.string(),
        range: z
          .object({ from: z.number().nullable(), to: z.number().nullable(), ol: z.boolean() })
          .nullable()
          .meta({ description: 'Readings of this outcome, V, Ω or A; null for no limit. `ol`: the meter shows OL' }),
        leads_to: z.string().meta({ description: 'What would be done next then, in words' }),
      }),
    ),
    probe: ProbeView.nullable().meta({ description: 'Of a measurement with a circuit: leads, power, what to set' }),
    how: z.string(),
    cautions: z.array(Caution),
    why: Why,
  })
  .meta({ id: 'Check' });
export type CheckView = z.infer<typeof CheckView>;

export const RemedyView = z
  .object({
    id: Id,
    name: z.string(),
    kind: z.string(),
    chance: Chance.meta({ description: 'That the unit works after it' }),
    minutes: z.number(),
    cost_minor: Money.meta({ description: 'Minutes and parts together' }),
    risk: Chance,
    parts: z.array(z.object({ part: Id, name: z.string(), count: z.number(), in_drawer: z.number() })),
    slot: z.string().nullable(),
    donors: z
      .array(z.object({ item_id: Id, name: z.string(), chance: Chance }))
      .meta({ description: 'For a transplant: where the assembly can come from' }),
    how: z.string(),
    recipe: z.string().nullable().meta({ description: 'Name of the written recipe for this kind of work; null where there is none' }),
    cautions: z.array(Caution),
    why: Why,
    spots: z
      .array(z.object({ ref: z.string(), x_mm: z.number(), y_mm: z.number(), side: z.enum(['front', 'back']) }))
      .meta({ description: 'Parts of the board that it is done to; only with a circuit' }),
  })
  .meta({ id: 'Remedy' });
export type RemedyView = z.infer<typeof RemedyView>;

export const Road = z.enum(['repair', 'transplant', 'part-out', 'leave']);
export type Road = z.infer<typeof Road>;

export const DecisionView = z
  .object({
    road: Road,
    options: z.array(
      z.object({
        road: Road,
        possible: z.boolean(),
        value_minor: Money.meta({ description: 'Expected money from here on, minutes paid' }),
        low_minor: Money.meta({ description: 'Tenth percentile' }),
        high_minor: Money.meta({ description: 'Ninetieth percentile' }),
        chance: Chance.meta({ description: 'That it ends as a working unit' }),
        minutes: z.number(),
        spend_minor: Money,
        why: Why,
      }),
    ),
    why: Why,
  })
  .meta({ id: 'Decision' });
export type DecisionView = z.infer<typeof DecisionView>;

/** What next: exactly one kind of thing to do, with the runners-up. */
export const AdviceView = z
  .object({
    do: z.enum(['receive', 'check', 'remedy', 'transplant', 'part-out', 'leave', 'prove', 'grade', 'list', 'sell', 'nothing']),
    id: z.string().meta({ description: 'What the person can disagree with, by name' }),
    headline: z.string(),
    why: Why,
    check: CheckView.nullable(),
    remedy: RemedyView.nullable(),
    other_checks: z.array(CheckView),
    other_remedies: z.array(RemedyView),
    declined: z.array(z.object({ id: z.string(), reason: z.string() })),
  })
  .meta({ id: 'Advice' });
export type AdviceView = z.infer<typeof AdviceView>;
