import { z } from 'zod';
import { Claim, Id } from '../events/index.ts';
import { Money } from './measures.ts';

export const ModelRow = z.object({
  id: Id,
  name: z.string(),
  revision: z.string(),
  level: z.number(),
  about: z.string(),
  units: z.number().int(),
  points: z.number().int(),
  referenced_points: z.number().int(),
  version: z
    .number()
    .int()
    .nullable()
    .meta({ description: 'Of a model that grows here: how many events made it; null for one of the folder' }),
});
export type ModelRow = z.infer<typeof ModelRow>;

export const BenchView = z
  .object({
    name: z.string(),
    currency: z.string(),
    hour_value_minor: Money,
    fee_percent: z.number(),
    postage_out_minor: Money,
    fees: z.array(
      z.object({
        place: z.string(),
        from_day: z.string(),
        bands: z.array(z.object({ up_to_minor: Money.nullable(), percent: z.number() })),
        fixed_minor: Money,
        cap_minor: Money.nullable(),
      }),
    ),
    postage: z
      .array(z.object({ from_day: z.string(), bands: z.array(z.object({ up_to_g: z.number(), price_minor: Money })) }))
      .meta({ description: 'Own tables of postage, by the weight of the parcel' }),
    taught_words: z.array(z.object({ words: z.string(), claim: Claim })).meta({ description: 'Own words for reading listings' }),
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
