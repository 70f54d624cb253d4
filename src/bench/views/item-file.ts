import { z } from 'zod';
import { Id, Judgement, Region, Stage, TestName, TestValue, TestVerdict } from '../events/index.ts';
import { Caution } from '../models/schema.ts';
import { AdviceView, DecisionView } from './advice.ts';
import { BeliefView } from './belief.ts';
import { Money } from './measures.ts';
import { TeachView } from './growth.ts';
import { ItemRow } from './rows.ts';

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
        limits: z.array(z.string()).meta({ description: 'What counts as passed, with numbers where there are any' }),
        because: z.array(z.string()).meta({ description: 'What of it the work touched or could have touched' }),
        measured: z.array(z.string()).meta({ description: 'What tests on this unit measured of it since the last work' }),
        measured_by: z.array(TestName).meta({ description: 'Tests that measure something of it' }),
        outcome: z.enum(['open', 'pass', 'fail', 'signed-off']),
        reason: z.string(),
        cautions: z.array(Caution),
      }),
    ),
    ready: z.boolean(),
  })
  .meta({ id: 'Proof' });
export type ProofView = z.infer<typeof ProofView>;

export const TestView = z
  .object({
    test: TestName,
    verdict: TestVerdict,
    text: z.string(),
    values: z.array(TestValue),
    known_good: z.boolean(),
    before_work: z.boolean().meta({ description: 'Work touched the unit after it, so it does not count any more' }),
    at: z.string(),
    event_id: z.string(),
  })
  .meta({ id: 'Test' });
export type TestView = z.infer<typeof TestView>;

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
    model: z.object({
      id: Id,
      name: z.string(),
      level: z.number(),
      version: z
        .number()
        .int()
        .nullable()
        .meta({ description: 'Of a model that grows here: the version that it is judged with; else null' }),
      newest_version: z.number().int().nullable(),
    }),
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
        expected: z.string().nullable().meta({ description: 'What a good board shows by its circuit, in words' }),
        fits: z
          .boolean()
          .nullable()
          .meta({ description: 'Whether the likeliest set of faults would show it; null where that cannot be said' }),
        event_id: z.string(),
      }),
    ),
    findings: z
      .array(z.object({ place: Id, name: z.string(), sees: z.string(), event_id: z.string(), region: Region.nullable() }))
      .meta({ description: 'What was seen where, oldest first; corrected ones left out' }),
    log: z.array(LogLine),
    belief: BeliefView,
    advice: AdviceView,
    decision: DecisionView,
    proof: ProofView,
    tests: z.array(TestView).meta({ description: 'What was measured, oldest first' }),
    sound_reference: TestView.nullable().meta({ description: 'The last sound check of a unit of this model that is known to be well' }),
    colour_reference: TestView.nullable().meta({ description: 'The last colour of a shell of this model that is unfaded' }),
    grade: z.object({ grade: z.string(), scale: z.string(), text: z.string(), judged: z.array(Judgement) }).nullable(),
    teach: TeachView.nullable().meta({
      description: 'What it can teach its model as a known-good board; null where its model does not grow here',
    }),
    money: MoneyView,
    seq: z.number().int(),
  })
  .meta({ id: 'ItemFile' });
export type ItemFile = z.infer<typeof ItemFile>;

export const ItemHistory = ItemFile.pick({ row: true, log: true }).meta({ id: 'ItemHistory' });
export type ItemHistory = z.infer<typeof ItemHistory>;
