import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { ModelCheckView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const LONGEST_S = 60;

const checkRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/check',
  summary: 'What a model can and cannot do now, and where its netlist disagrees with good boards, with the likeliest mistake',
  request: {
    params: z.object({ id: Id.meta({ description: 'Name of the model' }) }),
    query: z.object({
      seconds: z.coerce
        .number()
        .positive()
        .max(LONGEST_S)
        .default(0.4)
        .meta({ description: 'To look for mistakes in the netlist; asked again it goes on where it was' }),
    }),
  },
  responses: { ...answers(ModelCheckView, 'The check'), ...refusals('no-such-model', 'bad-input') },
});

/** The check of a model. */
export const modelCheckRoutes = ({ bench, clock }: AppParts) =>
  new OpenAPIHono().openapi(checkRoute, (c) => {
    const { id } = c.req.valid('param');
    const until = clock.now().getTime() + 1000 * c.req.valid('query').seconds;
    const check = bench.checkModel(id, () => clock.now().getTime() > until);
    if (!check) throw refuse('no-such-model', { where: 'id', detail: id });
    return c.json(check, 200);
  });
