import { z } from 'zod';
import { Id, SaleCondition } from '../events/index.ts';
import { Chance, Money, Why } from './measures.ts';

const Interval = {
  middle_minor: Money,
  low_minor: Money.meta({ description: 'Tenth percentile of a single sale' }),
  high_minor: Money.meta({ description: 'Ninetieth percentile' }),
};

export const MarketView = z
  .object({
    currency: z.string(),
    model_id: Id,
    sales: z.array(
      z.object({
        id: Id,
        day: z.string(),
        price_minor: Money,
        condition: SaleCondition,
        complete: z.number().nullable(),
        original: z.number().nullable(),
        own: z.boolean(),
        trust: Chance.meta({ description: 'Weight that its distance from the others left it' }),
        event_id: z.string().nullable(),
        text: z.string(),
      }),
    ),
    duplicates: z.array(z.object({ id: Id, of: Id })),
    outliers: z.array(Id),
    prices: z.array(z.object({ condition: SaleCondition, ...Interval })),
    spread: z.number().meta({ description: 'Standard deviation of the logarithm of one price' }),
    fresh_sales: z.number().meta({ description: 'As many sales of today as the known ones weigh' }),
    forecasts: z
      .object({
        count: z.number().int(),
        coverage: Chance.meta({ description: 'Share of sales inside the interval of 80 % that was said before' }),
        miss: z.number().meta({ description: 'Mean of the absolute logarithm of price over forecast' }),
      })
      .nullable(),
    waiting: z.object({
      offers: z.number().int(),
      sold: z.number().int(),
      median_days: z.number().nullable(),
      steps: z.array(z.object({ days: z.number(), at_risk: z.number().int(), unsold: Chance, error: z.number() })),
    }),
    asks: z.array(z.object({ ask_minor: Money, net_minor: Money, median_days: z.number(), per_month_minor: Money })),
    best_ask_minor: Money,
    why: Why,
  })
  .meta({ id: 'Market' });
export type MarketView = z.infer<typeof MarketView>;

export const AskingView = z
  .object({
    currency: z.string(),
    price: z.object(Interval),
    condition: SaleCondition,
    original: z.number().nullable(),
    ask_minor: Money.meta({ description: 'The ask that earns most a month' }),
    place: z.string().meta({ description: 'Where it is or was last offered; the fees are those of that place' }),
    fee_minor: Money,
    postage_minor: Money.meta({ description: 'What it costs to send' }),
    net_minor: Money.meta({ description: 'After fee, postage and the reserve for a return' }),
    median_days: z.number(),
    per_month_minor: Money,
    return_chance: Chance,
    steps: z.array(z.object({ week: z.number().int(), ask_minor: Money, worth_minor: Money })),
    bid: z
      .object({
        do: z.enum(['accept', 'counter']),
        reserve_minor: Money.meta({ description: 'A bid that is as good as waiting' }),
        counter_minor: Money,
        gain_minor: Money.meta({ description: 'What taking it leaves more than waiting; below zero it is less' }),
      })
      .nullable(),
    why: Why,
  })
  .meta({ id: 'Asking' });
export type AskingView = z.infer<typeof AskingView>;
