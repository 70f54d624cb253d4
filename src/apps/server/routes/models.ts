import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { readFile } from 'node:fs/promises';
import { Id, MeterMode } from '../../../bench/events/index.ts';
import { ModelFile, type Model } from '../../../bench/models/index.ts';
import { ModelRow } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { mediaTypeOf } from '../media-type.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const ModelPage = z
  .object({
    file: ModelFile,
    readings: z.array(z.object({ board: z.string(), point: z.string(), mode: MeterMode, value: z.number().nullable() })),
    photos: z.array(z.object({ side: z.string(), url: z.string() })),
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
export const modelRoutes = ({ bench, models }: AppParts) =>
  new OpenAPIHono()
    .openapi(listRoute, (c) => c.json({ models: [...bench.models()] }, 200))
    .openapi(modelRoute, (c) => {
      const { file, readings, photos } = modelNamed(models, c.req.valid('param').id);
      const urls = photos.map(({ side }) => ({ side, url: `/api/models/${file.id}/photos/${encodeURIComponent(side)}` }));
      return c.json({ file, readings: [...readings], photos: urls }, 200);
    })
    .openapi(photoRoute, async (c) => {
      const { id, side } = c.req.valid('param');
      const photo = modelNamed(models, id).photos.find((candidate) => candidate.side === side);
      if (!photo) throw refuse('no-such-photo', { where: 'side', detail: side });
      return c.body(new Uint8Array(await readFile(photo.path)), 200, {
        'content-type': mediaTypeOf(photo.path),
        'cache-control': 'no-cache',
      });
    });

function modelNamed(models: AppParts['models'], id: string): Model {
  const model = models.get(id);
  if (!model) throw refuse('no-such-model', { where: 'id', detail: id });
  return model;
}
