import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { boardMarks, noMarks } from '../../../bench/grow/board-marks.ts';
import { BoardMarks } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const marksRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/marks',
  summary: 'What was marked on the picture of the board of a model: photos, parts, connections',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }) },
  responses: { ...answers(BoardMarks, 'All marks'), ...refusals('no-such-model') },
});

/** The pictures of boards of models that grow on this bench. */
export const growBoardRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono().openapi(marksRoute, (c) => {
    const { id } = c.req.valid('param');
    const { grown: models, seq } = bench.state();
    const grown = models.get(id);
    if (!grown && !bench.model(id)) throw refuse('no-such-model', { where: 'id', detail: id });
    return c.json(grown ? boardMarks(grown, seq) : noMarks(id, seq), 200);
  });
