import { z } from 'zod';
import { Id } from '../events/index.ts';
import { Money } from './measures.ts';

const Line = z.object({
  id: z.string(),
  name: z.string(),
  units: z.number().int(),
  profit_minor: Money,
  minutes: z.number(),
  profit_per_hour_minor: Money.nullable(),
});

export const BreakdownView = z
  .object({
    currency: z.string(),
    by_model: z.array(Line),
    by_seller: z.array(Line),
    by_remedy: z.array(Line).meta({ description: 'A unit counts under each remedy that was done to it' }),
    returns: z
      .object({
        sold: z.number().int(),
        returned: z.number().int(),
        chance: z.number().meta({ description: 'That a sold unit comes back, as this bench has learned it' }),
        days: z.number().int().meta({ description: 'So long they are reckoned to come back' }),
        open: z.number().int().meta({ description: 'Units sold within those days' }),
        reserve_minor: Money,
      })
      .meta({ description: 'What to keep back for returns' }),
    estimates: z.array(z.object({ item_id: Id, number: z.number().int(), name: z.string(), expected_minor: Money, sold_minor: Money })),
  })
  .meta({ id: 'Breakdown' });
export type BreakdownView = z.infer<typeof BreakdownView>;
