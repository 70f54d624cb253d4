import { z } from 'zod';
import { Claim, Id } from '../events/index.ts';
import { Chance, Money, Why } from './measures.ts';

/** A lot that is offered: units of one or several kinds, for one price. */
export const LotQuestion = z.object({
  seller: z.string().max(200).default(''),
  units: z
    .array(z.object({ model_id: Id, count: z.number().int().min(1).max(40).default(1), claims: z.array(Claim).max(50).default([]) }))
    .min(1)
    .max(20)
    .meta({ description: 'Units of which the same is said; at most 40 together' }),
  price_minor: Money.min(0),
  postage_minor: Money.min(0).default(0),
  tax_minor: Money.min(0).default(0).meta({ description: 'Import tax and duty' }),
  currency: z.string().optional(),
  rate: z.number().positive().default(1).meta({ description: 'Bench currency for one unit of `currency`' }),
});
export type LotQuestion = z.infer<typeof LotQuestion>;

export const LotPoint = z.object({
  price_minor: Money,
  profit_minor: Money,
  loss_chance: Chance,
  per_hour_minor: Money.nullable().meta({ description: 'Null where the lot makes no work' }),
});

export const LotView = z
  .object({
    currency: z.string(),
    asks_minor: Money.meta({ description: 'What is asked with postage and tax' }),
    worth_minor: Money.meta({ description: 'What the pile earns more with the lot, on average over what it may turn out to be' }),
    bias_minor: Money.meta({ description: 'Taken off, as who buys among several bidders has likely guessed too high' }),
    ceiling_minor: Money.meta({ description: 'The most to pay, postage and tax included' }),
    by_loss_minor: Money.meta({ description: 'The most by the chance of a loss that is accepted' }),
    by_hour_minor: Money.meta({ description: 'The most by what an hour must bring' }),
    minutes: z.number().meta({ description: 'Of work that it adds' }),
    at_asked: LotPoint,
    curve: z.array(LotPoint),
    states: z.number().int().meta({ description: 'So many states of the lot were looked at' }),
    verdict: z.enum(['buy', 'haggle', 'leave']),
    why: Why,
  })
  .meta({ id: 'Lot' });
export type LotView = z.infer<typeof LotView>;

export const SellerQuestions = z
  .object({
    currency: z.string(),
    questions: z.array(
      z.object({
        function: Id,
        ask: z.string(),
        worth_minor: Money.meta({ description: 'What knowing the answer is worth before buying at this price' }),
        works_chance: Chance,
        if_works_minor: Money.meta({ description: 'What the lot is worth when the seller says that it works' }),
        if_fails_minor: Money,
      }),
    ),
    why: Why,
  })
  .meta({ id: 'SellerQuestions' });
export type SellerQuestions = z.infer<typeof SellerQuestions>;
