import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id, ItemKind } from '../../../bench/events/index.ts';
import { ItemFile, ItemHistory, ItemRow, Status } from '../../../bench/views/index.ts';
import type { ItemQuery } from '../../../bench/ports.ts';
import type { AppParts } from '../app-parts.ts';
import { pageLimit } from '../query.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const Query = z.object({
  q: z.string().max(200).optional().meta({ description: 'Words that must all begin a word of the name, number, model, lot or seller' }),
  status: z
    .string()
    .transform((text) => text.split(','))
    .pipe(z.array(Status))
    .optional()
    .openapi({
      type: 'string',
      description: `One or more of ${Status.options.join(', ')}, with commas between`,
      example: 'bought,on-the-bench',
    }),
  kind: ItemKind.optional(),
  place: z.string().max(64).optional().meta({ description: 'The item that it sits in' }),
  model: Id.optional(),
  after: z.string().max(400).optional().meta({ description: 'The `next` of the page before' }),
  limit: pageLimit(200, 50),
});

const listRoute = createRoute({
  method: 'get',
  path: '/api/items',
  summary: 'Items, newest change first, page by page',
  request: { query: Query },
  responses: {
    ...answers(z.object({ rows: z.array(ItemRow), next: z.string().nullable() }).meta({ id: 'ItemPage' }), 'One page; `next` continues it'),
    ...refusals('bad-input'),
  },
});

const itemRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}',
  summary: 'One item: its log, belief, advice, decision, proof and money',
  request: { params: z.object({ item: z.string().max(80).meta({ description: 'Its id or stock number', example: '7' }) }) },
  responses: { ...answers(ItemFile, 'All that is known of it'), ...refusals('no-such-item') },
});

const historyRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}/history',
  summary: 'The log of one item, without advice: as quick however much is on the bench',
  request: { params: z.object({ item: z.string().max(80).meta({ description: 'Its id or stock number', example: '7' }) }) },
  responses: { ...answers(ItemHistory, 'What happened to it'), ...refusals('no-such-item') },
});

/** The list of items, and one item whole. */
export const itemRoutes = ({ bench, door }: AppParts) =>
  new OpenAPIHono()
    .openapi(listRoute, async (c) => {
      const page = await door.items(itemQuery(c.req.valid('query')));
      return c.json({ rows: [...page.rows], next: page.next }, 200);
    })
    .openapi(historyRoute, async (c) => {
      const { item } = c.req.valid('param');
      const history = await door.history(item);
      if (!history) throw refuse('no-such-item', { where: 'item', detail: item });
      return c.json(history, 200);
    })
    .openapi(itemRoute, (c) => {
      const { item } = c.req.valid('param');
      const file = bench.item(item);
      if (!file) throw refuse('no-such-item', { where: 'item', detail: item });
      return c.json(file, 200);
    });

function itemQuery({ q, ...rest }: z.output<typeof Query>): ItemQuery {
  const given = Object.entries({ ...rest, search: q }).filter(([, value]) => value !== undefined && value !== '');
  return Object.fromEntries(given) as unknown as ItemQuery;
}
