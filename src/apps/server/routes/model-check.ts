import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id } from '../../../bench/events/index.ts';
import { netlistText } from '../../../core/netting/index.ts';
import { placementView } from '../../../bench/netting/index.ts';
import { ModelCheckView, PlacementImportView, PlacementQuestion } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { csvLines } from '../csv-lines.ts';
import { refuse } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

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

const placementRoute = createRoute({
  method: 'post',
  path: '/api/models/{id}/placement',
  summary:
    'A table of places from any program held against a model that grows: which column is what, its parts, what does not agree; nothing is kept',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }), body: jsonBody(PlacementQuestion) },
  responses: {
    ...answers(PlacementImportView, 'What the table places'),
    ...refusals('no-such-model', 'bad-input', 'bad-json', 'unsupported-media-type', 'body-too-large'),
  },
});

const netlistRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/netlist',
  summary: 'The netlist of a model as SPICE text',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }) },
  responses: {
    200: { description: 'The netlist', content: { 'text/plain': { schema: z.string() } } },
    ...refusals('no-such-model', 'no-circuit'),
  },
});

/** The check of a model, and its netlist and placement out and in. */
export const modelCheckRoutes = ({ bench, clock }: AppParts) =>
  new OpenAPIHono()
    .openapi(checkRoute, (c) => {
      const { id } = c.req.valid('param');
      const until = clock.now().getTime() + 1000 * c.req.valid('query').seconds;
      const check = bench.checkModel(id, () => clock.now().getTime() > until);
      if (!check) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json(check, 200);
    })
    .openapi(placementRoute, (c) => {
      const { id } = c.req.valid('param');
      const [model, grown] = [bench.model(id), bench.state().grown.get(id)];
      if (!model || !grown) throw refuse('no-such-model', { where: 'id', detail: id });
      const question = c.req.valid('json');
      return c.json(placementView(model, grown, question, csvLines(question.text)), 200);
    })
    .openapi(netlistRoute, (c) => {
      const { id } = c.req.valid('param');
      const model = bench.model(id);
      if (!model) throw refuse('no-such-model', { where: 'id', detail: id });
      if (!model.circuit) throw refuse('no-circuit', { where: 'id', detail: id });
      return c.text(netlistText(model.circuit.netlist), 200, { 'content-disposition': `attachment; filename="${id}.cir"` });
    });
