import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { GrowthView, PooledPointView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const Growth = z
  .object({
    growth: GrowthView.nullable().meta({ description: 'Null for a model of the folder, which does not grow here' }),
    points: z.array(PooledPointView).meta({ description: 'What known-good boards show, by boards and revisions' }),
  })
  .meta({ id: 'GrowthPage' });

const route = createRoute({
  method: 'get',
  path: '/api/models/{id}/growth',
  summary: 'How a model grew: what was told of it and by whom, and what its known-good boards show',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }) },
  responses: { ...answers(Growth, 'How it grew'), ...refusals('no-such-model') },
});

/** How models grow here. What is told of them comes in as events. */
export const growthRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono().openapi(route, (c) => {
    const { id } = c.req.valid('param');
    const growth = bench.growth(id);
    if (!growth) throw refuse('no-such-model', { where: 'id', detail: id });
    return c.json(growth, 200);
  });
