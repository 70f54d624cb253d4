import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { screwMat } from '../../../bench/hands/index.ts';
import type { AppParts } from '../app-parts.ts';
import { refuse } from '../refused.ts';
import { refusals } from '../responses.ts';

const route = createRoute({
  method: 'get',
  path: '/api/models/{id}/mat',
  summary: 'The mat for the fasteners of a model at true scale, as PDF',
  request: {
    params: z.object({ id: Id.meta({ description: 'Name of the model' }) }),
    query: z.object({ paper: z.enum(['A4', 'Letter']).default('A4') }),
  },
  responses: {
    200: {
      description: 'The mat; print it at 100 %, and check it by its rulers',
      content: { 'application/pdf': { schema: { type: 'string', format: 'binary' } } },
    },
    ...refusals('bad-input', 'no-such-model', 'panel-too-large'),
  },
});

/** Mats to print. */
export const matRoutes = ({ bench, printer }: AppParts) =>
  new OpenAPIHono().openapi(route, async (c) => {
    const { id } = c.req.valid('param');
    const { paper } = c.req.valid('query');
    const model = bench.model(id);
    if (!model) throw refuse('no-such-model', { where: 'id', detail: id });
    const mat = screwMat(model.file, paper);
    if (!mat.ok) throw refuse('panel-too-large', { where: paper, detail: mat.panel });
    return c.body(new Uint8Array(await printer.mat(mat)), 200, {
      'content-type': 'application/pdf',
      'content-disposition': `inline; filename="mat-${id}-${paper.toLowerCase()}.pdf"`,
      'cache-control': 'no-cache',
    });
  });
