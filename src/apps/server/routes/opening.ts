import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { OpeningView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/items/{item}/opening',
  summary: 'How to open an item to a goal, or to close it, from where it stands, with the count of its fasteners',
  request: {
    params: z.object({ item: z.string().max(80).meta({ description: 'Its id or stock number', example: '7' }) }),
    query: z.object({
      to: z.string().max(100).optional().meta({ description: 'One of `goals`, such as "slot:display"; the first of them when left out' }),
    }),
  },
  responses: {
    ...answers(OpeningView, 'The steps that are left, the way back, and the fasteners'),
    ...refusals('bad-input', 'no-such-item'),
  },
});

/** Into a device and out of it. */
export const openingRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono().openapi(route, (c) => {
    const { item } = c.req.valid('param');
    const opening = bench.opening(item, c.req.valid('query').to ?? null);
    if (!opening) throw refuse('no-such-item', { where: 'item', detail: item });
    return c.json(opening, 200);
  });
