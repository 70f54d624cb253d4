import { z } from 'zod';
import { Id, ItemKind } from '../events/index.ts';

/** Where an item is in its life. */
export const Status = z.enum(['bought', 'on-the-bench', 'proved', 'listed', 'sold', 'kept', 'scrapped', 'in-a-unit', 'in-the-drawer']);
export type Status = z.infer<typeof Status>;

/** One line of a list of items; kept in the store and made by the fold. */
export const ItemRow = z
  .object({
    id: Id,
    number: z.number().int().meta({ description: 'Stock number: 1, 2, 3 … in the order of buying' }),
    name: z.string(),
    kind: ItemKind,
    model_id: Id,
    status: Status,
    lot_id: z.string().nullable(),
    lot_title: z.string(),
    seller: z.string(),
    place: z.string().meta({ description: 'The item that it sits in, or empty' }),
    slot: z.string(),
    cost_minor: z.number().int().meta({ description: 'All cost that it carries now, in the currency of the bench' }),
    grade: z.string(),
    changed_at: z.string(),
    changed_seq: z.number().int(),
  })
  .meta({ id: 'ItemRow' });
export type ItemRow = z.infer<typeof ItemRow>;

/** Raise when the making of rows changes: rows of an older version are made anew at the next start. */
export const ROWS_VERSION = 1;
