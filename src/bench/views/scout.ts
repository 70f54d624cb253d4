import { z } from 'zod';
import { Claim, Id } from '../events/index.ts';
import { Hypothesis } from './belief.ts';
import { Chance, Money, Why } from './measures.ts';

export const ScoutQuestion = z.object({
  model_id: Id,
  seller: z.string().default(''),
  count: z.number().int().min(1).max(200).default(1),
  price_minor: Money.min(0),
  postage_minor: Money.min(0).default(0),
  tax_minor: Money.min(0).default(0).meta({ description: 'Import tax and duty' }),
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
    asks_minor: Money.meta({ description: 'What is asked, postage and tax included' }),
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
        closes_at: z.string().nullable(),
        photos: z.array(z.string()),
        question: ScoutQuestion.meta({ description: 'The listing as it was weighed, to weigh or buy it anew' }),
        outlook: OutlookView,
        told: z
          .array(z.object({ item_id: Id, number: z.number().int(), said: z.string(), right: z.boolean().nullable() }))
          .meta({ description: 'Of a listing that was bought: each claim, and whether it was right; null while nothing has settled it' }),
      }),
    ),
  })
  .meta({ id: 'Watch' });
export type WatchView = z.infer<typeof WatchView>;
