import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { readFile } from 'node:fs/promises';
import { Id, MeterMode } from '../../../bench/events/index.ts';
import { ModelFile, type Model, type ReferencePhoto } from '../../../bench/models/index.ts';
import { LearnedBundle, ModelRow, NetView, PointView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { mediaTypeOf } from '../media-type.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const PlacedPart = z
  .object({
    ref: z.string(),
    x_mm: z.number(),
    y_mm: z.number(),
    rotation_deg: z.number().meta({ description: 'Against the clock, seen from the front' }),
    side: z.enum(['front', 'back']),
    value: z.string(),
    package: z.string(),
    block: z.string(),
    nets: z.array(z.string().nullable()).meta({ description: 'Net of each pin in order; null for a pin that is joined to nothing' }),
  })
  .meta({ id: 'PlacedPart' });

const ModelPage = z
  .object({
    file: ModelFile,
    version: z.number().int().nullable().meta({ description: 'Of a model that grows here: how many events made it' }),
    readings: z.array(z.object({ board: z.string(), point: z.string(), mode: MeterMode, value: z.number().nullable() })),
    photos: z.array(z.object({ side: z.string(), url: z.string() })),
    parts: z.array(PlacedPart).meta({ description: 'Parts on the board as the placement has them; none below level 2' }),
  })
  .meta({ id: 'ModelPage' });

const ModelId = z.object({ id: Id.meta({ description: 'Name of the model' }) });

const listRoute = createRoute({
  method: 'get',
  path: '/api/models',
  summary: 'The models, with how much is known of each',
  responses: { ...answers(z.object({ models: z.array(ModelRow) }).meta({ id: 'ModelList' }), 'Every model'), ...refusals() },
});
const modelRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}',
  summary: 'One model: its file, reference readings and reference photos',
  request: { params: ModelId },
  responses: { ...answers(ModelPage, 'The model'), ...refusals('no-such-model') },
});
const pointsRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/points',
  summary: 'Where boards of a model can be measured; at level 2 also at the nets of its circuit',
  request: { params: ModelId },
  responses: {
    ...answers(z.object({ points: z.array(PointView) }).meta({ id: 'PointList' }), 'Every point'),
    ...refusals('no-such-model'),
  },
});
const netsRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/nets',
  summary: 'What the nets of a board carry at most, largest first; none without a circuit',
  request: { params: ModelId },
  responses: {
    ...answers(z.object({ nets: z.array(NetView) }).meta({ id: 'NetList' }), 'Every net on the board'),
    ...refusals('no-such-model'),
  },
});
const learnedRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/learned',
  summary: 'What was learned of a model from own jobs, as a file to give away: no prices, no names, no photos',
  request: { params: ModelId },
  responses: { ...answers(LearnedBundle, 'The learned numbers'), ...refusals('no-such-model') },
});
const photoRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/photos/{side}',
  summary: 'A reference photo of a model',
  request: { params: ModelId.extend({ side: z.string().max(64) }) },
  responses: {
    200: { description: 'The picture', content: { 'image/*': { schema: { type: 'string', format: 'binary' } } } },
    ...refusals('no-such-model', 'no-such-photo'),
  },
});

/** What is known of device types. */
export const modelRoutes = ({ bench, photos: kept }: AppParts) =>
  new OpenAPIHono()
    .openapi(listRoute, (c) => c.json({ models: [...bench.models()] }, 200))
    .openapi(modelRoute, (c) => {
      const { file, version = null, readings, photos, circuit } = modelNamed(bench, c.req.valid('param').id);
      const urls = photos.map(({ side }) => ({ side, url: `/api/models/${file.id}/photos/${encodeURIComponent(side)}` }));
      return c.json({ file, version, readings: [...readings], photos: urls, parts: partsOnBoard(circuit) }, 200);
    })
    .openapi(learnedRoute, (c) => {
      const { id } = c.req.valid('param');
      const bundle = bench.sharedLearning(id);
      if (!bundle) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json(bundle, 200, { 'content-disposition': `attachment; filename="learned-${id}.json"` });
    })
    .openapi(pointsRoute, (c) => {
      const { id } = c.req.valid('param');
      const points = bench.points(id);
      if (!points) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json({ points: [...points] }, 200);
    })
    .openapi(netsRoute, (c) => {
      const { id } = c.req.valid('param');
      const nets = bench.nets(id);
      if (!nets) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json({ nets: [...nets] }, 200);
    })
    .openapi(photoRoute, async (c) => {
      const { id, side } = c.req.valid('param');
      const photo = modelNamed(bench, id).photos.find((candidate) => candidate.side === side);
      const found = photo && (await pictureOf(photo, kept));
      if (!found) throw refuse('no-such-photo', { where: 'side', detail: side });
      return c.body(new Uint8Array(found.bytes), 200, { 'content-type': found.mediaType, 'cache-control': 'no-cache' });
    });

async function pictureOf(photo: ReferencePhoto, kept: AppParts['photos']) {
  if ('hash' in photo) return kept.get(photo.hash, 'view');
  return { bytes: await readFile(photo.path), mediaType: mediaTypeOf(photo.path) };
}

const partsOnBoard = (circuit: Model['circuit']): z.infer<typeof PlacedPart>[] =>
  (circuit?.parts ?? []).flatMap(({ ref, x, y, rotation, side, value, package: name, block, nets }) =>
    side === 'off' ? [] : [{ ref, x_mm: x, y_mm: y, rotation_deg: rotation, side, value, package: name, block, nets: [...nets] }],
  );

function modelNamed(bench: AppParts['bench'], id: string): Model {
  const model = bench.model(id);
  if (!model) throw refuse('no-such-model', { where: 'id', detail: id });
  return model;
}
