import { z } from 'zod';
import { Id } from '../events/index.ts';
import { Chance, Money, Why } from './measures.ts';

export const ListingToCompare = z.object({
  title: z.string().min(1).max(200),
  price_minor: Money.min(0),
  postage_minor: Money.min(0).default(0),
  tax_minor: Money.min(0).default(0),
  currency: z.string().optional(),
  rate: z.number().positive().default(1).meta({ description: 'Bench currency for one unit of `currency`' }),
  seller: z.string().max(200).default(''),
  text: z.string().max(4000).default('').meta({ description: 'Its words, read into claims' }),
  closes_at: z.string().nullable().default(null),
  count: z.number().int().min(1).max(40).default(1),
  model_id: Id,
});
export type ListingToCompare = z.infer<typeof ListingToCompare>;

export const CompareQuestion = z.object({ listings: z.array(ListingToCompare).min(1).max(100) });
export type CompareQuestion = z.infer<typeof CompareQuestion>;

export const ComparedListing = z.object({
  index: z.number().int().meta({ description: 'Place in the question, from 0' }),
  title: z.string(),
  seller: z.string(),
  model_id: Id,
  count: z.number().int(),
  closes_at: z.string().nullable(),
  asks_minor: Money.meta({ description: 'With postage and tax, in the currency of the bench' }),
  worth_minor: Money.meta({ description: 'What the pile earns more with it' }),
  profit_minor: Money.meta({ description: 'At the asked price, the error of the keenest bidder taken off' }),
  minutes: z.number().meta({ description: 'Of work that it adds' }),
  per_hour_minor: Money.nullable().meta({ description: 'Null where it makes no work' }),
  claims: z.array(z.string()).meta({ description: 'What was read in its words and counts' }),
  honesty: Chance,
});
export type ComparedListing = z.infer<typeof ComparedListing>;

export const CompareView = z
  .object({
    currency: z.string(),
    listings: z.array(ComparedListing).meta({ description: 'By profit per hour at the asked price, most first' }),
    why: Why,
  })
  .meta({ id: 'Comparison' });
export type CompareView = z.infer<typeof CompareView>;
