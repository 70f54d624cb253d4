import { z } from 'zod';
import { Claim, Id, Stage } from '../events/index.ts';
import { Caution } from '../models/schema.ts';
import { ItemRow, Status } from './rows.ts';

/** The answers of the open interface. Money is minor units of the bench's currency unless `currency` stands beside it. */

const Chance = z.number().min(0).max(1);
const Money = z.number().int();

/** A line of "why": plain words, made by the bench from numbers that stand beside it. */
const Why = z.array(z.string());

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
    outcomes: z.array(z.object({ outcome: z.string(), chance: Chance, means: z.string() })),
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
    cautions: z.array(Caution),
    why: Why,
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

export const LogLine = z
  .object({
    event_id: z.string(),
    seq: z.number().int(),
    at: z.string(),
    device: z.string(),
    kind: z.string(),
    text: z.string().meta({ description: 'The event in plain words' }),
    corrected: z.boolean(),
    foreign: z.boolean(),
    photo: z.string().nullable(),
  })
  .meta({ id: 'LogLine' });
export type LogLine = z.infer<typeof LogLine>;

export const ProofView = z
  .object({
    steps: z.array(
      z.object({
        id: Id,
        name: z.string(),
        how: z.string(),
        outcome: z.enum(['open', 'pass', 'fail', 'signed-off']),
        reason: z.string(),
        cautions: z.array(Caution),
      }),
    ),
    ready: z.boolean(),
  })
  .meta({ id: 'Proof' });
export type ProofView = z.infer<typeof ProofView>;

export const MoneyView = z
  .object({
    currency: z.string(),
    costs: z.array(z.object({ reason: z.string(), text: z.string(), amount_minor: Money })),
    cost_minor: Money,
    minutes: z.number(),
    income_minor: Money.meta({ description: 'Price and postage charged, less fees, postage and refunds' }),
    profit_minor: Money.nullable().meta({ description: 'Null until sold or scrapped' }),
    profit_per_hour_minor: Money.nullable(),
  })
  .meta({ id: 'Money' });
export type MoneyView = z.infer<typeof MoneyView>;

export const ItemFile = z
  .object({
    row: ItemRow,
    model: z.object({ id: Id, name: z.string(), level: z.number() }),
    stage: Stage,
    slots: z.array(
      z.object({
        slot: Id,
        name: z.string(),
        holds: z.enum(['its-own', 'another', 'nothing']),
        item_id: z.string().nullable(),
        item_name: z.string(),
      }),
    ),
    photos: z.array(z.object({ hash: z.string(), side: z.string(), caption: z.string(), event_id: z.string() })),
    readings: z.array(
      z.object({
        point: Id,
        name: z.string(),
        mode: z.string(),
        value: z.number().nullable(),
        reference: z.string().nullable(),
        sigmas: z.number().nullable(),
        event_id: z.string(),
      }),
    ),
    findings: z
      .array(z.object({ place: Id, sees: z.string(), event_id: z.string() }))
      .meta({ description: 'What was seen where, oldest first; corrected ones left out' }),
    log: z.array(LogLine),
    belief: BeliefView,
    advice: AdviceView,
    decision: DecisionView,
    proof: ProofView,
    grade: z.object({ grade: z.string(), scale: z.string(), text: z.string() }).nullable(),
    money: MoneyView,
    seq: z.number().int(),
  })
  .meta({ id: 'ItemFile' });
export type ItemFile = z.infer<typeof ItemFile>;

export const PileView = z
  .object({
    currency: z.string(),
    counts: z.partialRecord(Status, z.number().int()),
    plan: z.array(
      z.object({
        row: ItemRow,
        advice_do: z.string(),
        headline: z.string(),
        road: Road,
        value_minor: Money,
        low_minor: Money.meta({ description: 'Tenth percentile' }),
        high_minor: Money.meta({ description: 'Ninetieth percentile' }),
        chance: Chance,
        minutes: z.number(),
        why: Why,
      }),
    ),
    value_minor: Money,
    minutes: z.number(),
  })
  .meta({ id: 'Pile' });
export type PileView = z.infer<typeof PileView>;

export const DrawerView = z
  .object({
    currency: z.string(),
    assemblies: z.array(z.object({ row: ItemRow, works_chance: Chance, from: z.string() })),
    bags: z.array(
      z.object({ id: Id, part: Id, name: z.string(), place: z.string(), count: z.number().int(), cost_minor: Money, low: z.boolean() }),
    ),
    orders: z.array(
      z.object({
        id: Id,
        supplier: z.string(),
        lines: z.array(z.object({ part: Id, name: z.string(), count: z.number(), price_minor: Money })),
        cost_minor: Money,
        placed_at: z.string(),
        arrived_at: z.string().nullable(),
      }),
    ),
  })
  .meta({ id: 'Drawer' });
export type DrawerView = z.infer<typeof DrawerView>;

export const BooksView = z
  .object({
    currency: z.string(),
    units: z.array(
      z.object({
        row: ItemRow,
        cost_minor: Money,
        income_minor: Money,
        profit_minor: Money.nullable(),
        minutes: z.number(),
        profit_per_hour_minor: Money.nullable(),
      }),
    ),
    months: z.array(
      z.object({
        month: z.string(),
        bought_minor: Money.meta({ description: 'Paid for lots, parts and orders' }),
        sold_minor: Money.meta({ description: 'Prices and postage charged, less refunds' }),
        fees_minor: Money,
        postage_minor: Money.meta({ description: 'Paid to send what was sold, and for what came back' }),
        cost_of_sales_minor: Money,
        write_off_minor: Money,
        profit_minor: Money,
        units_sold: z.number().int(),
      }),
    ),
    stock_minor: Money,
    parts_minor: Money,
    on_order_minor: Money,
    cash_minor: Money,
    balanced: z.boolean().meta({ description: 'The ledger sums to zero, event by event' }),
  })
  .meta({ id: 'Books' });
export type BooksView = z.infer<typeof BooksView>;

export const ScoutQuestion = z.object({
  model_id: Id,
  seller: z.string().default(''),
  count: z.number().int().min(1).max(200).default(1),
  price_minor: Money.min(0),
  postage_minor: Money.min(0).default(0),
  currency: z.string().optional(),
  rate: z.number().positive().default(1),
  claims: z.array(Claim).default([]),
});
export type ScoutQuestion = z.infer<typeof ScoutQuestion>;

export const OutlookView = z
  .object({
    currency: z.string(),
    hypotheses: z.array(Hypothesis),
    works_as_is: Chance,
    mendable: Chance.meta({ description: 'That a unit of it ends as a working one on the best road' }),
    value_minor: Money.meta({ description: 'Expected money of the whole lot from receiving on, minutes paid, purchase not' }),
    low_minor: Money,
    high_minor: Money,
    ceiling_minor: Money.meta({ description: 'The price, postage included, above which it is expected to lose' }),
    asks_minor: Money.meta({ description: 'What is asked, postage included' }),
    loss_chance: Chance.meta({ description: 'That it ends below what is asked' }),
    minutes: z.number(),
    verdict: z.enum(['buy', 'haggle', 'leave']),
    honesty: z.object({ chance: Chance, claims_checked: z.number().int() }),
    why: Why,
  })
  .meta({ id: 'Outlook' });
export type OutlookView = z.infer<typeof OutlookView>;

export const WatchView = z
  .object({
    listings: z.array(
      z.object({
        id: Id,
        title: z.string(),
        seller: z.string(),
        model_id: Id,
        fate: z.string(),
        reason: z.string(),
        weighed_at: z.string(),
        question: ScoutQuestion.meta({ description: 'The listing as it was weighed, to weigh or buy it anew' }),
        outlook: OutlookView,
      }),
    ),
  })
  .meta({ id: 'Watch' });
export type WatchView = z.infer<typeof WatchView>;

export const ModelRow = z.object({
  id: Id,
  name: z.string(),
  revision: z.string(),
  level: z.number(),
  about: z.string(),
  units: z.number().int(),
  points: z.number().int(),
  referenced_points: z.number().int(),
});
export type ModelRow = z.infer<typeof ModelRow>;

export const BenchView = z
  .object({
    name: z.string(),
    currency: z.string(),
    hour_value_minor: Money,
    fee_percent: z.number(),
    postage_out_minor: Money,
    demo: z.enum(['none', 'present', 'put-away']),
    events: z.number().int(),
    items: z.number().int(),
    foreign_events: z.number().int(),
    orphans: z.number().int(),
    can_set_currency: z.boolean(),
    version: z.string(),
    device: z.string(),
  })
  .meta({ id: 'Bench' });
export type BenchView = z.infer<typeof BenchView>;

export const Problem = z
  .object({
    code: z.string(),
    message: z.string().meta({ description: 'What is wrong, where, and what to do next' }),
    where: z.string().optional(),
  })
  .meta({ id: 'Problem' });
export type Problem = z.infer<typeof Problem>;
