import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { AskingView, ListingTextView, MarketView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const marketRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/market',
  summary: 'Sales of a model, its prices with intervals, time to sale, and what asking more or less leads to',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }) },
  responses: { ...answers(MarketView, 'The market of the model'), ...refusals('no-such-model') },
});
const askingRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}/asking',
  summary: 'What to ask for a unit, week by week, and whether to take a bid',
  request: {
    params: z.object({ item: z.string().max(80).meta({ description: 'Its id or stock number', example: '7' }) }),
    query: z.object({
      bid_minor: z.coerce
        .number()
        .int()
        .min(0)
        .max(1e12)
        .optional()
        .meta({ description: 'A bid in the currency of the bench', example: 5500 }),
    }),
  },
  responses: { ...answers(AskingView, 'What to ask'), ...refusals('bad-input', 'no-such-item') },
});
const textRoute = createRoute({
  method: 'get',
  path: '/api/items/{item}/listing-text',
  summary: "The text of a listing from what is on file of a unit, in the person's own words",
  request: { params: z.object({ item: z.string().max(80).meta({ description: 'Its id or stock number', example: '7' }) }) },
  responses: { ...answers(ListingTextView, 'The text, and what bears it out'), ...refusals('no-such-item') },
});

/** What things are worth, and what to ask for them. */
export const marketRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(marketRoute, (c) => {
      const { id } = c.req.valid('param');
      const market = bench.market(id);
      if (!market) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json(market, 200);
    })
    .openapi(textRoute, (c) => {
      const { item } = c.req.valid('param');
      const text = bench.listingText(item);
      if (!text) throw refuse('no-such-item', { where: 'item', detail: item });
      return c.json(text, 200);
    })
    .openapi(askingRoute, (c) => {
      const { item } = c.req.valid('param');
      const asking = bench.asking(item, c.req.valid('query').bid_minor ?? null);
      if (!asking) throw refuse('no-such-item', { where: 'item', detail: item });
      return c.json(asking, 200);
    });
