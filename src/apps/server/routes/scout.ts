import { OpenAPIHono, createRoute } from '@hono/zod-openapi';
import type { Refusal } from '../../../bench/bench.ts';
import {
  CompareQuestion,
  CompareView,
  LotQuestion,
  LotView,
  OutlookView,
  ScoutQuestion,
  SellerQuestions,
  WatchView,
} from '../../../bench/views/index.ts';
import { problemOfRefusal } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse, Refused } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

const LISTING_REFUSALS = ['bad-input', 'bad-json', 'body-too-large', 'unsupported-media-type'] as const;

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
    ...refusals(...LISTING_REFUSALS),
  },
});

const lotRoute = createRoute({
  method: 'post',
  path: '/api/scout/lot',
  summary: 'What a lot is worth to the pile as it is planned, the most to pay, and price against profit and risk; nothing is stored',
  request: { body: jsonBody(LotQuestion.meta({ id: 'LotQuestion' })) },
  responses: { ...answers(LotView, 'The worth of the lot to this pile'), ...refusals(...LISTING_REFUSALS, 'no-plans') },
});

const compareRoute = createRoute({
  method: 'post',
  path: '/api/scout/compare',
  summary: 'Listings side by side by what each would add to the pile as it is planned, most profit per hour first; nothing is stored',
  request: { body: jsonBody(CompareQuestion.meta({ id: 'CompareQuestion' })) },
  responses: { ...answers(CompareView, 'The listings in their order'), ...refusals(...LISTING_REFUSALS, 'no-plans') },
});

const questionsRoute = createRoute({
  method: 'post',
  path: '/api/scout/questions',
  summary: 'What to ask the seller before buying at the asked price, most worth first; nothing is stored',
  request: { body: jsonBody(ScoutQuestion) },
  responses: { ...answers(SellerQuestions, 'The questions'), ...refusals(...LISTING_REFUSALS) },
});

/** Should I buy it. */
export const scoutRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(watchRoute, (c) => c.json(bench.watch(), 200))
    .openapi(askRoute, (c) => {
      return c.json(sound(bench.outlook(c.req.valid('json'))), 200);
    })
    .openapi(lotRoute, async (c) => {
      const lot = await bench.lot(c.req.valid('json'));
      if (lot === null) throw refuse('no-plans');
      return c.json(sound(lot), 200);
    })
    .openapi(compareRoute, async (c) => {
      const compared = await bench.compare(c.req.valid('json'));
      if (compared === null) throw refuse('no-plans');
      return c.json(sound(compared), 200);
    })
    .openapi(questionsRoute, (c) => c.json(sound(bench.sellerQuestions(c.req.valid('json'))), 200));

/** An answer as it is; a refusal ends the request. */
function sound<T extends object>(answer: T | Refusal): T {
  if ('ok' in answer) throw new Refused(400, problemOfRefusal(answer as Refusal));
  return answer as T;
}
