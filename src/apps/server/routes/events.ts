import { OpenAPIHono, createRoute, z } from '@hono/zod-openapi';
import { EventSchema } from '../event-schema.ts';
import type { AppParts } from '../app-parts.ts';
import { afterSeq, pageLimit } from '../query.ts';
import { refuse, refusedBatch } from '../refused.ts';
import { answers, jsonBody, refusals, ruleRefusal } from '../responses.ts';
import { visitorOf, type Visitor } from '../visitor.ts';

/** How many events one request may carry. */
export const BATCH_LIMIT = 1000;

const EVENT_REF = { $ref: '#/components/schemas/Event' };

/** Events are checked one by one by the bench, which names the event and the field; here only their number is. */
const Batch = z
  .object({ events: z.array(z.unknown().openapi(EVENT_REF)).min(1).max(BATCH_LIMIT, `must hold at most ${BATCH_LIMIT} events`) })
  .meta({ id: 'EventBatch' });

const StoredAnswer = z
  .object({ stored: z.array(z.object({ id: z.uuid(), seq: z.number().int(), duplicate: z.boolean() })) })
  .meta({ id: 'StoredEvents', description: 'The place of each event in the log; a duplicate keeps the place it had' });

const LogPage = z.object({ events: z.array(z.object({ seq: z.number().int(), event: EventSchema })) }).meta({ id: 'LogPage' });

const postRoute = createRoute({
  method: 'post',
  path: '/api/events',
  summary: 'Stores a batch of events, all or nothing; on disk before it is answered',
  request: { body: jsonBody(Batch) },
  responses: {
    ...answers(StoredAnswer, 'Stored'),
    ...refusals('bad-input', 'bad-json', 'other-device', 'body-too-large', 'unsupported-media-type'),
    ...ruleRefusal,
  },
});

const listRoute = createRoute({
  method: 'get',
  path: '/api/events',
  summary: 'The log in order, page by page',
  request: { query: z.object({ after: afterSeq, limit: pageLimit(BATCH_LIMIT, 200) }) },
  responses: { ...answers(LogPage, 'Events after that place'), ...refusals('bad-input') },
});

/** An event with the name of the device that sends it; a device of the network may note nothing under the name of another. */
function signed(event: unknown, { name }: Visitor): unknown {
  if (name === null || typeof event !== 'object' || event === null) return event;
  const said = 'device' in event ? event.device : name;
  if (said !== name) throw refuse('other-device', { where: 'body.events', detail: String(said) });
  return { ...event, device: name };
}

/** The log: adding to it and reading it. `grown` is told after each batch. */
export const eventRoutes = ({ bench, door }: AppParts, grown: () => void) =>
  new OpenAPIHono()
    .openapi(postRoute, async (c) => {
      const events = c.req.valid('json').events.map((event) => signed(event, visitorOf(c)));
      const result = await door.record(events);
      if (!result.ok) throw refusedBatch(result, events.length);
      grown();
      return c.json({ stored: [...result.stored] }, 200);
    })
    .openapi(listRoute, (c) => {
      const { after, limit } = c.req.valid('query');
      return c.json({ events: [...bench.log(after, limit)] as z.output<typeof LogPage>['events'] }, 200);
    });
