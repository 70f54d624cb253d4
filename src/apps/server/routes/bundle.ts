import { createHash } from 'node:crypto';
import type { BenchViews } from '../../../bench/bench.ts';
import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { stateText } from '../../../bench/state-text.ts';
import { takeBundle } from '../../../bench/take-bundle.ts';
import { wholeLog } from '../../../bench/whole-log.ts';
import { problemOfTaking } from '../../../bench/words.ts';
import type { AppParts } from '../app-parts.ts';
import { Refused, refuse } from '../refused.ts';
import { answers, refusals } from '../responses.ts';

const zip = { 'application/zip': { schema: { type: 'string' as const, format: 'binary' } } };

const getRoute = createRoute({
  method: 'get',
  path: '/api/bundle',
  summary: 'The whole bench, events and photos, as one file',
  responses: { 200: { description: 'The bundle', content: zip }, ...refusals() },
});

const ImportAnswer = z
  .object({
    events: z.number().int(),
    photos: z.number().int(),
    digest: z.string().meta({ description: 'SHA-256 of the state: the same as that of the bench that was exported' }),
  })
  .meta({ id: 'ImportAnswer' });

const postRoute = createRoute({
  method: 'post',
  path: '/api/bundle',
  summary: 'Takes a bundle into an empty bench',
  request: { body: { required: true, content: zip } },
  responses: { ...answers(ImportAnswer, 'How much came in'), ...refusals('bad-bundle', 'not-empty', 'body-too-large') },
});

/** The bench as one file. `grown` is told after an import. */
export const bundleRoutes = (parts: AppParts, grown: () => void) =>
  new OpenAPIHono()
    .openapi(getRoute, async (c) => {
      const bytes = await parts.bundle.write(wholeLog(parts.bench), parts.photos);
      return c.body(new Uint8Array(bytes), 200, {
        'content-type': 'application/zip',
        'content-disposition': 'attachment; filename="salvor-bench.zip"',
        'cache-control': 'no-store',
        'x-salvor-digest': digestOf(parts.bench),
      });
    })
    .openapi(postRoute, async (c) => {
      const { bench, door, photos, bundle } = parts;
      const { events } = bench.overview();
      if (events > 0) throw refuse('not-empty', { detail: String(events) });
      const read = await bundle.read(new Uint8Array(await c.req.arrayBuffer()));
      if (!read.ok) throw refuse('bad-bundle', { detail: read.detail });
      const taken = await takeBundle({ overview: bench.overview, adopt: door.adopt }, photos, read);
      if (!taken.ok) throw new Refused(taken.code === 'not-empty' ? 409 : 400, problemOfTaking(taken, read.events.length));
      grown();
      return c.json({ events: taken.events, photos: taken.photos, digest: digestOf(bench) }, 200);
    });

const digestOf = (bench: BenchViews): string => createHash('sha256').update(stateText(bench.state())).digest('hex');
