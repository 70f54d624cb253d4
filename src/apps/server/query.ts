import { z } from '@hono/zod-openapi';

/** A `limit` in a query: how many at most, from 1 to `most`. */
export const pageLimit = (most: number, usual: number) =>
  z.coerce
    .number()
    .int()
    .min(1)
    .max(most, `must be at most ${most}`)
    .default(usual)
    .openapi({ type: 'integer', minimum: 1, maximum: most, default: usual });

/** An `after` in a query: the seq that the answer begins behind. */
export const afterSeq = z.coerce.number().int().min(0).default(0).openapi({ type: 'integer', minimum: 0, default: 0 });
