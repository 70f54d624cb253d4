import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import type { CompareDesk, DeskRefusal } from '../../../bench/eyes/index.ts';
import { Id } from '../../../bench/events/index.ts';
import { ComparisonView, JudgementView, JudgeQuestion, PhotoQuestion, ReferencesView } from '../../../bench/views/index.ts';
import type { AppParts } from '../app-parts.ts';
import { IMMUTABLE } from '../headers.ts';
import { refuse } from '../refused.ts';
import { answers, jsonBody, refusals } from '../responses.ts';

const ofKey = { params: z.object({ key: z.string().regex(/^[0-9a-f]{64}$/, 'must be the key of a comparison') }) };
const bodyRefusals = ['bad-input', 'bad-json', 'body-too-large', 'unsupported-media-type'] as const;

const startRoute = createRoute({
  method: 'post',
  path: '/api/comparisons',
  summary:
    'Compares a photo of a unit with those of good boards of its model, in the background; the same question again finds the same comparison',
  request: { body: jsonBody(PhotoQuestion) },
  responses: {
    ...answers(ComparisonView, 'How far it is, and what was found once it is ready'),
    ...refusals(...bodyRefusals, 'no-such-item', 'no-such-model', 'no-such-photo', 'no-reference', 'no-eyes'),
  },
});
const progressRoute = createRoute({
  method: 'get',
  path: '/api/comparisons/{key}',
  summary: 'How far a comparison is, and what was found once it is ready',
  request: ofKey,
  responses: { ...answers(ComparisonView, 'The comparison'), ...refusals('bad-input', 'no-such-comparison', 'no-eyes') },
});
const stopRoute = createRoute({
  method: 'post',
  path: '/api/comparisons/{key}/stop',
  summary: 'Ends a comparison that is under way',
  request: ofKey,
  responses: { ...answers(ComparisonView, 'The comparison'), ...refusals('bad-input', 'no-such-comparison', 'no-eyes') },
});
const laidRoute = createRoute({
  method: 'get',
  path: '/api/comparisons/{key}/laid',
  summary: 'The compared photo as it lies on the reference',
  request: ofKey,
  responses: {
    200: { description: 'The picture', content: { 'image/jpeg': { schema: { type: 'string', format: 'binary' } } } },
    ...refusals('bad-input', 'no-such-comparison', 'no-eyes'),
  },
});
const judgeRoute = createRoute({
  method: 'post',
  path: '/api/comparisons/judge',
  summary: 'Whether a photo that was sent is good enough to compare, how the camera stood against the reference, and how to take it again',
  request: { body: jsonBody(JudgeQuestion) },
  responses: {
    ...answers(JudgementView, 'The judgement'),
    ...refusals(...bodyRefusals, 'no-such-model', 'no-such-photo', 'no-eyes'),
  },
});
const referencesRoute = createRoute({
  method: 'get',
  path: '/api/models/{id}/references',
  summary: 'Photos of known-good boards of a model that others are compared with, the first of each side giving the frame',
  request: { params: z.object({ id: Id.meta({ description: 'Name of the model' }) }) },
  responses: { ...answers(ReferencesView, 'The references'), ...refusals('no-such-model', 'no-eyes') },
});

/** The eyes: photos of boards laid on one another. */
export const comparisonRoutes = ({ eyes }: AppParts) => {
  const desk = (): CompareDesk => {
    if (!eyes) throw refuse('no-eyes');
    return eyes;
  };
  const known = <T>(found: T | null, key: string): T => {
    if (found === null) throw refuse('no-such-comparison', { where: 'key', detail: key.slice(0, 12) });
    return found;
  };
  return new OpenAPIHono()
    .openapi(judgeRoute, async (c) => c.json(granted(await desk().judge(c.req.valid('json'))), 200))
    .openapi(startRoute, async (c) => c.json(granted(await desk().start(c.req.valid('json'))), 200))
    .openapi(progressRoute, async (c) => {
      const { key } = c.req.valid('param');
      return c.json(known(await desk().progress(key), key), 200);
    })
    .openapi(stopRoute, async (c) => {
      const { key } = c.req.valid('param');
      return c.json(known(await desk().stop(key), key), 200);
    })
    .openapi(laidRoute, async (c) => {
      const { key } = c.req.valid('param');
      const bytes = known(await desk().laid(key), key);
      return c.body(new Uint8Array(bytes), 200, { 'content-type': 'image/jpeg', 'cache-control': IMMUTABLE });
    })
    .openapi(referencesRoute, (c) => {
      const { id } = c.req.valid('param');
      const found = desk().references(id);
      if (!found) throw refuse('no-such-model', { where: 'id', detail: id });
      return c.json(found, 200);
    });
};

function granted<T>(asked: { readonly ok: true; readonly view: T } | DeskRefusal): T {
  if (!asked.ok) throw refuse(asked.code, { where: asked.code === 'no-such-photo' ? 'photo' : 'item_id', detail: asked.detail });
  return asked.view;
}
