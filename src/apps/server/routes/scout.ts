import { OpenAPIHono, createRoute } from '@hono/zod-openapi';
import { OutlookView, ScoutQuestion, WatchView } from '../../../bench/views/index.ts';
import { problemOfRefusal } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { Refused } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

const watchRoute = createRoute({
  method: 'get',
  path: '/api/scout',
  summary: 'The listings that were weighed, each with its outlook now',
  responses: { ...answers(WatchView, 'The watch list'), ...refusals() },
});

const askRoute = createRoute({
  method: 'post',
  path: '/api/scout',
  summary: 'What a listing is worth to this bench; nothing is stored',
  request: { body: jsonBody(ScoutQuestion.meta({ id: 'ScoutQuestion' })) },
  responses: {
    ...answers(OutlookView, 'The outlook: ceiling, chance of loss, and why'),
    ...refusals('bad-input', 'bad-json', 'body-too-large', 'unsupported-media-type'),
  },
});

/** Should I buy it. */
export const scoutRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(watchRoute, (c) => c.json(bench.watch(), 200))
    .openapi(askRoute, (c) => {
      const outlook = bench.outlook(c.req.valid('json'));
      if ('ok' in outlook) throw new Refused(400, problemOfRefusal(outlook));
      return c.json(outlook, 200);
    });
