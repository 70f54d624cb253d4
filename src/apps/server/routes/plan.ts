import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { BenchViews } from '../../../bench/bench.ts';
import { ChoiceQuestion, PlanView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

const planRoute = createRoute({
  method: 'get',
  path: '/api/plan',
  summary: 'The plan of the whole pile: what to do with each thing, what to order, what it earns; made in the background',
  request: {
    query: z.object({
      wait: z.enum(['yes', 'no', 'last']).default('no').meta({
        description:
          '`yes`: answer once the plan of the pile as it is now is made; `last`: the last one, whether or not the pile has changed since',
      }),
    }),
  },
  responses: { ...answers(PlanView, 'The plan'), ...refusals('bad-input') },
});

const choiceRoute = createRoute({
  method: 'post',
  path: '/api/plan/choice',
  summary: 'What it would cost to decide otherwise; nothing is stored, the event `plan-chosen` decides',
  request: { body: jsonBody(ChoiceQuestion.meta({ id: 'ChoiceQuestion' })) },
  responses: {
    ...answers(z.object({ regret_minor: z.number().int() }).meta({ id: 'Regret' }), 'What the whole plan would earn less'),
    ...refusals('bad-input', 'bad-json', 'body-too-large', 'unsupported-media-type', 'no-such-choice'),
  },
});

const PLANS = {
  yes: (bench: BenchViews) => bench.planSettled(),
  no: (bench: BenchViews) => bench.plan(),
  last: (bench: BenchViews) => bench.planLast(),
} as const;

/** What to do with everything together. */
export const planRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(planRoute, async (c) => c.json(await PLANS[c.req.valid('query').wait](bench), 200))
    .openapi(choiceRoute, async (c) => {
      const question = c.req.valid('json');
      const regretMinor = await bench.regretOf(question);
      if (regretMinor === null) throw refuse('no-such-choice', { where: 'item_id', detail: question.item_id });
      return c.json({ regret_minor: Math.round(regretMinor) }, 200);
    });
