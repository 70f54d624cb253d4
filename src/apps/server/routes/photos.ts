import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { Context } from 'hono';
import type { PhotoStore } from '../../../bench/ports.ts';
import { Problem } from '../../../bench/views/index.ts';
import { problemOfPhoto } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { IMMUTABLE } from '../headers.ts';
import { refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const PhotoResult = z
  .union([
    z.object({
      name: z.string(),
      ok: z.literal(true),
      photo: z.object({
        hash: z.string(),
        media_type: z.string(),
        width_px: z.number().int(),
        height_px: z.number().int(),
        bytes: z.number().int(),
        taken_at: z.string().nullable(),
      }),
      duplicate: z.boolean().meta({ description: 'The same picture was here already' }),
    }),
    Problem.extend({ name: z.string(), ok: z.literal(false) }),
  ])
  .meta({ id: 'PhotoResult' });
type PhotoResult = z.infer<typeof PhotoResult>;

const binary = { type: 'string', format: 'binary' } as const;
const form = { type: 'object' as const, properties: { photos: { type: 'array' as const, items: binary } }, required: ['photos'] };

const postRoute = createRoute({
  method: 'post',
  path: '/api/photos',
  summary: 'Keeps pictures; each is taken or refused by itself. An event photo-taken then hangs one on an item',
  request: { body: { required: true, content: { 'multipart/form-data': { schema: form } } } },
  responses: {
    ...answers(z.object({ results: z.array(PhotoResult) }).meta({ id: 'PhotoResults' }), 'One result a file, in the order of the files'),
    ...refusals('no-photos', 'body-too-large', 'unsupported-media-type'),
  },
});

const getRoute = createRoute({
  method: 'get',
  path: '/photos/{hash}/{size}',
  summary: 'A picture as it came, at a size for looking, or as a thumbnail',
  request: {
    params: z.object({
      hash: z.string().regex(/^[0-9a-f]{64}$/, 'must be the SHA-256 of a photo in hexadecimal'),
      size: z.enum(['view', 'thumb', 'original']),
    }),
  },
  responses: {
    200: { description: 'The picture', content: { 'image/*': { schema: binary } } },
    ...refusals('bad-input', 'no-such-photo'),
  },
});

/** Pictures in and out. They are named by their content, so an answer never changes. */
export const photoRoutes = ({ photos }: AppParts) =>
  new OpenAPIHono()
    .openapi(postRoute, async (c) => {
      const files = await filesOf(c);
      return c.json({ results: await Promise.all(files.map((file) => keep(photos, file))) }, 200);
    })
    .openapi(getRoute, async (c) => {
      const { hash, size } = c.req.valid('param');
      const found = await photos.get(hash, size);
      if (!found) throw refuse('no-such-photo', { where: 'hash', detail: hash.slice(0, 12) });
      return c.body(new Uint8Array(found.bytes), 200, { 'content-type': found.mediaType, 'cache-control': IMMUTABLE });
    });

async function filesOf(c: Context): Promise<File[]> {
  if (!/^multipart\/form-data\b/i.test(c.req.header('content-type') ?? ''))
    throw refuse('unsupported-media-type', { where: 'content-type' });
  const sent = await c.req.formData().catch(() => null);
  const files = [...(sent?.values() ?? [])].filter((value): value is File => value instanceof File);
  if (files.length === 0) throw refuse('no-photos', { where: 'body.photos' });
  return files;
}

async function keep(photos: PhotoStore, file: File): Promise<PhotoResult> {
  const result = await photos.put(file.name, new Uint8Array(await file.arrayBuffer()));
  if (!result.ok) return { name: file.name, ok: false, ...problemOfPhoto(result) };
  const { hash, mediaType, widthPx, heightPx, bytes, takenAt } = result.photo;
  const photo = { hash, media_type: mediaType, width_px: widthPx, height_px: heightPx, bytes, taken_at: takenAt };
  return { name: file.name, ok: true, photo, duplicate: result.duplicate };
}
