import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { Id, Line, ModelBundle, photosOf, SharedFact } from '../../../bench/events/index.ts';
import { leavingWith } from '../../../bench/grow/share-model.ts';
import { problemOfPhoto } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { Refused, refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const zip = { 'application/zip': { schema: { type: 'string' as const, format: 'binary' } } };
const ModelId = z.object({ id: Id.meta({ description: 'Name of a model that grows here' }) });
const GiverQuery = z.object({
  author: Line.max(100).default('A bench').meta({ description: 'How whoever gives it away wants to be called' }),
  licence: z.string().trim().max(100).default(''),
});

const Sharing = z
  .object({
    sharing: z
      .object({
        leaves: z.array(z.string()).meta({ description: 'Everything that leaves with the bundle, a line each' }),
        photos: z.array(z.string()).meta({ description: 'Hashes of the photos in it' }),
        facts: z.array(SharedFact),
      })
      .nullable()
      .meta({ description: 'Null for a model of the folder' }),
  })
  .meta({ id: 'Sharing' });

const sharingRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/sharing',
  summary: 'What would leave with the bundle of a model, before it leaves',
  request: { params: ModelId, query: GiverQuery },
  responses: { ...answers(Sharing, 'All of it'), ...refusals('no-such-model', 'bad-input') },
});
const bundleRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/bundle',
  summary: 'A model that grows here, with its photos, as one file to give away',
  request: { params: ModelId, query: GiverQuery },
  responses: { 200: { description: 'The bundle', content: zip }, ...refusals('no-such-model', 'bad-input') },
});
const lookRoute = createRoute({
  method: 'post',
  path: '/api/model-bundle',
  summary: 'Looks into the bundle of a model and keeps its photos; events model-begun or model-taken-in then take it in',
  request: { body: { required: true, content: zip } },
  responses: {
    ...answers(z.object({ bundle: ModelBundle }).meta({ id: 'ModelBundleLook' }), 'What is in it'),
    ...refusals('bad-bundle', 'body-too-large'),
  },
});

/** Models given to others, and taken from them. */
export const growShareRoutes = ({ bench, photos, modelBundles }: AppParts) =>
  new OpenAPIHono()
    .openapi(sharingRoute, (c) => {
      const { id } = c.req.valid('param');
      if (!bench.model(id)) throw refuse('no-such-model', { where: 'id', detail: id });
      const bundle = bench.modelBundle(id, c.req.valid('query'));
      const sharing = bundle && { leaves: leavingWith(bundle), photos: photosOf(bundle), facts: bundle.facts };
      return c.json({ sharing }, 200);
    })
    .openapi(bundleRoute, async (c) => {
      const { id } = c.req.valid('param');
      const bundle = bench.modelBundle(id, c.req.valid('query'));
      if (!bundle) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.body(new Uint8Array(await modelBundles.write(bundle, photos)), 200, {
        'content-type': 'application/zip',
        'content-disposition': `attachment; filename="model-${id}.zip"`,
        'cache-control': 'no-store',
      });
    })
    .openapi(lookRoute, async (c) => {
      const read = await modelBundles.read(new Uint8Array(await c.req.arrayBuffer()));
      if (!read.ok) throw refuse('bad-bundle', { detail: read.detail });
      for (const { name, bytes } of read.photos) {
        const kept = await photos.put(name, bytes);
        if (!kept.ok) throw new Refused(400, problemOfPhoto(kept));
      }
      return c.json({ bundle: read.bundle }, 200);
    });
