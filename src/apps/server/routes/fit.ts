import { OpenAPIHono, createRoute } from '@hono/zod-openapi';
import { answerFit } from '../../../bench/fit/index.ts';
import { FitQuestion, FitView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { csvLines } from '../csv-lines.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

/** No answer takes longer, ms. */
const LONGEST_MS = 20_000;

const fitRoute = createRoute({
  method: 'post',
  path: '/api/fit',
  summary: 'Which parts fit a place on a board: parts that are given, those of the drawer, those of a supplier’s list',
  request: { body: jsonBody(FitQuestion) },
  responses: {
    ...answers(FitView, 'Every part with its answer, pad by pad'),
    ...refusals('bad-input', 'bad-json', 'unsupported-media-type', 'body-too-large'),
  },
});

/** Does it fit. Nothing of it is kept. */
export const fitRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono().openapi(fitRoute, (c) => {
    const until = Date.now() + LONGEST_MS;
    const { bags } = bench.state();
    return c.json(answerFit(c.req.valid('json'), { bags, linesOf: csvLines, shouldStop: () => Date.now() > until }), 200);
  });
