import { z } from 'zod';
import { BODIES, KINDS, type Body, type Kind } from './kinds.ts';
import { isNestedDeeperThan } from './nested.ts';
import { Id } from './words.ts';

/** The schema version that this code writes. */
export const EVENT_VERSION = 1;

/** What every event carries, whatever its kind. */
export const Envelope = z.object({
  id: z.uuid().meta({ description: 'UUID version 7 (RFC 9562): unique, and sortable by the time of its making' }),
  at: z.iso
    .datetime({ message: 'must be a UTC time such as 2026-05-01T09:30:00Z' })
    .meta({ description: 'When it happened, by the clock of the device' }),
  device: Id.meta({ description: 'The device that recorded it' }),
  version: z.number().int().min(1).meta({ description: 'Schema version of the body' }),
});

/** Made once: a schema costs more to make than to use. */
const Incoming = Envelope.extend({ kind: z.string().min(1).max(64), body: z.unknown() });

/** One event of a known kind: the body is checked by its kind. */
export type EventOf<K extends Kind> = z.infer<typeof Envelope> & { readonly kind: K; readonly body: Body<K> };
export type BenchEvent = { [K in Kind]: EventOf<K> }[Kind];

/** An event of a kind that this version does not know: kept, shown as such, and never folded. */
export type ForeignEvent = z.infer<typeof Envelope> & { readonly kind: string; readonly body: unknown; readonly foreign: true };

export type AnyEvent = BenchEvent | ForeignEvent;

/** An event with its place in the log of this bench: 1, 2, 3 … in order of arrival. */
export interface Stored {
  readonly seq: number;
  readonly event: AnyEvent;
}

export const isForeign = (event: AnyEvent): event is ForeignEvent => 'foreign' in event;

export interface EventProblem {
  readonly ok: false;
  readonly code: 'bad-event';
  /** Where in the event, such as `body.price_minor`. */
  readonly field: string;
  /** What is wrong with that field, as a clause: "must not be negative". */
  readonly message: string;
}

/**
 * The event in a parsed JSON value, its body checked and its defaults filled in. A kind that this version does not
 * know is accepted only from a newer schema version; otherwise it is a mistake and named as such.
 */
export function parseEvent(value: unknown): { ok: true; event: AnyEvent } | EventProblem {
  const envelope = Incoming.safeParse(value);
  if (!envelope.success) return problem(envelope.error, '');
  const { kind, body, ...rest } = envelope.data;
  if (isNestedDeeperThan(MOST_LEVELS, body))
    return { ok: false, code: 'bad-event', field: 'body', message: `is nested more than ${MOST_LEVELS} levels deep` };
  if (!isKind(kind)) {
    if (rest.version > EVENT_VERSION) return { ok: true, event: { ...rest, kind, body, foreign: true } };
    return { ok: false, code: 'bad-event', field: 'kind', message: `"${kind}" is not a kind of event; the kinds are ${KINDS.join(', ')}` };
  }
  if (rest.version > EVENT_VERSION) return { ok: true, event: { ...rest, kind, body, foreign: true } };
  const parsed = BODIES[kind].safeParse(body);
  if (!parsed.success) return problem(parsed.error, 'body');
  return { ok: true, event: { ...rest, kind, body: parsed.data } as BenchEvent };
}

/** Bodies have three levels; what a newer version writes may have more, but not so many that keeping it exhausts the stack. */
const MOST_LEVELS = 100;

const isKind = (kind: string): kind is Kind => Object.hasOwn(BODIES, kind);

function problem(error: z.ZodError, root: string): EventProblem {
  const issue = error.issues[0]!;
  const path = [root, ...issue.path.map(String)].filter((part) => part !== '').join('.');
  return { ok: false, code: 'bad-event', field: path || 'event', message: issue.message };
}
