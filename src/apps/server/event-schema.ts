import { z } from '@hono/zod-openapi';
import { BODIES, Envelope, EVENT_VERSION, KINDS, type Kind } from '../../bench/events/index.ts';

const known = (kind: Kind) =>
  Envelope.extend({ kind: z.literal(kind), body: BODIES[kind] as z.ZodType }).meta({ id: `Event.${kind}`, title: kind });

const Newer = Envelope.extend({
  kind: z.string(),
  version: z.number().int(),
  body: z.unknown(),
  foreign: z.boolean().optional(),
}).meta({ id: 'Event.newer', description: `Of a kind or version above ${EVENT_VERSION} that this program does not know: kept as it came` });

/** Any event, as the open interface describes it: one schema a kind, and one for what a newer version wrote. */
export const EventSchema = z.union([...KINDS.map(known), Newer] as unknown as [z.ZodType, ...z.ZodType[]]).meta({ id: 'Event' });
