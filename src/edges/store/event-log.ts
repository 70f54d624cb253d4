import { EVENT_VERSION, isForeign, parseEvent, type AnyEvent, type BenchEvent, type Stored } from '../../bench/events/index.ts';
import type { AppendOutcome } from '../../bench/ports.ts';
import type { Insertable, Selectable } from 'kysely';
import { build, type Queries } from './queries.ts';
import type { EventTable } from './tables.ts';

/** The table of events: in at the end, out in order, never changed. */
export interface EventLog {
  /** The first place of each event in the log; stored only where its id is new. */
  append(events: readonly AnyEvent[]): AppendOutcome[];
  read(afterSeq: number, limit: number): Stored[];
  lastSeq(): number;
  has(ids: readonly string[]): ReadonlySet<string>;
}

export function eventLogOn(queries: Queries): EventLog {
  const insert = queries.prepare<Columns, unknown>((arg) =>
    build
      .insertInto('event')
      .values({
        id: arg('id'),
        at: arg('at'),
        device: arg('device'),
        kind: arg('kind'),
        version: arg('version'),
        checked_version: arg('checked_version'),
        body: arg('body'),
      })
      .onConflict((conflict) => conflict.column('id').doNothing()),
  );
  const seqOf = queries.prepare<{ id: string }, { seq: number }>((arg) =>
    build.selectFrom('event').select('seq').where('id', '=', arg('id')),
  );
  const page = queries.prepare<{ after: number; limit: number }, Selectable<EventTable>>((arg) =>
    build.selectFrom('event').selectAll().where('seq', '>', arg('after')).orderBy('seq').limit(arg('limit')),
  );
  const last = queries.prepare<object, { seq: number | null }>(() => build.selectFrom('event').select((e) => e.fn.max('seq').as('seq')));
  return {
    append: (events) =>
      events.map((event) => {
        const duplicate = insert.run(columnsOf(event)) === 0;
        return { id: event.id, seq: seqOf.get({ id: event.id })!.seq, duplicate };
      }),
    read: (after, limit) => page.all({ after, limit }).map((row) => ({ seq: row.seq, event: eventOf(row) })),
    lastSeq: () => last.get({})!.seq ?? 0,
    has: (ids) => new Set(ids.filter((id) => seqOf.get({ id }) !== undefined)),
  };
}

type Columns = Insertable<EventTable>;

function columnsOf(event: AnyEvent): Columns {
  const { id, at, device, kind, version } = event;
  const body = JSON.stringify(event.body) ?? 'null';
  return { id, at, device, kind, version, checked_version: isForeign(event) ? 0 : EVENT_VERSION, body };
}

/** What this version checked comes out as it went in; what another one checked, or none, is checked now and foreign if not understood. */
export function eventOf({ id, at, device, kind, version, checked_version, body }: Selectable<EventTable>): AnyEvent {
  const event = { id, at, device, version, kind, body: JSON.parse(body) as unknown };
  if (checked_version === EVENT_VERSION && version <= EVENT_VERSION) return event as BenchEvent;
  const parsed = parseEvent(event);
  return parsed.ok ? parsed.event : { ...event, foreign: true };
}
