import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { boardMarks, noMarks } from '../../../bench/grow/board-marks.ts';
import { fitsSeen } from '../../../bench/grow/fits-seen.ts';
import { BoardMarks, FitsSeenView } from '../../../bench/views/index.ts';
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

const fitsRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/fits',
  summary: 'Which parts and assemblies of other models go into the slots of a model, from what was said and what came of it',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }) },
  responses: { ...answers(FitsSeenView, 'Slot by slot, what went in most often first'), ...refusals('no-such-model') },
});

/** The pictures of boards of models that grow on this bench, and what was found to fit into their slots. */
export const growBoardRoutes = ({ bench }: AppParts) =>
  new OpenAPIHono()
    .openapi(marksRoute, (c) => {
      const { id } = c.req.valid('param');
      const state = bench.state();
      const grown = state.grown.get(id);
      if (!grown && !bench.model(id)) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json(grown ? boardMarks(grown, state.seq) : noMarks(id, state.seq), 200);
    })
    .openapi(fitsRoute, (c) => {
      const { id } = c.req.valid('param');
      const model = bench.model(id);
      if (!model) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json(
        fitsSeen(bench.state(), model, (other) => bench.model(other)?.file.name ?? other),
        200,
      );
    });
