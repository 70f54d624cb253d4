import { sql } from 'kysely';
import { EVENT_VERSION, isForeign, type AnyEvent, type Stored } from '../../../bench/events/index.ts';
import { ABOUT_ALL } from '../../../bench/ports-shared.ts';
import type { AppendOutcome } from '../../../bench/ports.ts';
import { eventOf } from '../event-log.ts';
import type { Database } from './database.ts';
import { storable } from './storable.ts';

/** The ids of the items that an event is about, as far as it says so itself. */
export type SubjectsOf = (event: AnyEvent) => readonly string[];

/** How many events or rows go into one statement. */
export const AT_ONCE = 1000;

interface Placed {
  readonly seq: number;
  readonly event: AnyEvent;
}

export interface Appended {
  readonly outcomes: AppendOutcome[];
  /** The last place of the log afterwards. */
  readonly last: number;
}

/** Adds what is new behind the last place and says where each event stands. Only ever while no other process can append. */
export async function appendTo(database: Database, events: readonly AnyEvent[], subjectsOf: SubjectsOf): Promise<Appended> {
  const places = await placesOf(
    database,
    events.map(({ id }) => id),
  );
  let seq = await lastPlace(database);
  const fresh: Placed[] = [];
  const outcomes = events.map((event): AppendOutcome => {
    const known = places.get(event.id);
    if (known !== undefined) return { id: event.id, seq: known, duplicate: true };
    places.set(event.id, ++seq);
    fresh.push({ seq, event });
    return { id: event.id, seq, duplicate: false };
  });
  for (let i = 0; i < fresh.length; i += AT_ONCE) await insert(database, fresh.slice(i, i + AT_ONCE), subjectsOf);
  return { outcomes, last: seq };
}

export async function lastPlace(database: Database): Promise<number> {
  const { seq } = await database
    .selectFrom('event')
    .select((e) => e.fn.max('seq').as('seq'))
    .executeTakeFirstOrThrow();
  return seq ?? 0;
}

/** Places of those ids that are in the log. */
export async function placesOf(database: Database, ids: readonly string[]): Promise<Map<string, number>> {
  const rows = await knownQuery(database, ids).execute();
  return new Map(rows.map(({ id, seq }) => [id, seq]));
}

export async function eventsAfter(database: Database, after: number, limit: number): Promise<Stored[]> {
  const rows = await eventsQuery(database, after, limit).execute();
  return rows.map((row) => ({ seq: row.seq, event: eventOf(row) }));
}

export const knownQuery = (database: Database, ids: readonly string[]) =>
  database
    .selectFrom('event')
    .select(['id', 'seq'])
    .where('id', '=', sql<string>`ANY(${[...ids]}::text[])`);

export const eventsQuery = (database: Database, after: number, limit: number) =>
  database.selectFrom('event').selectAll().where('seq', '>', after).orderBy('seq').limit(limit);

/** Events about an item, and those that are about all of them. */
export const aboutQuery = (database: Database, itemId: string) =>
  database
    .selectFrom('event_subject')
    .innerJoin('event', 'event.seq', 'event_subject.seq')
    .selectAll('event')
    .where('event_subject.item_id', 'in', [itemId, ABOUT_ALL])
    .orderBy('event_subject.seq');

async function insert(database: Database, fresh: readonly Placed[], subjectsOf: SubjectsOf): Promise<void> {
  const events = fresh.map(({ event }) => event);
  await database
    .insertInto('event')
    .columns(['seq', 'id', 'at', 'device', 'kind', 'version', 'checked_version', 'body'])
    .expression(
      sql`SELECT * FROM unnest(${fresh.map(({ seq }) => seq)}::bigint[], ${events.map(({ id }) => id)}::text[],
        ${events.map(({ at }) => at)}::text[], ${events.map(({ device }) => device)}::text[], ${events.map(({ kind }) => storable(kind))}::text[],
        ${events.map(({ version }) => version)}::int[], ${events.map((event) => (isForeign(event) ? 0 : EVENT_VERSION))}::int[],
        ${events.map(({ body }) => JSON.stringify(body) ?? 'null')}::text[])`,
    )
    .execute();
  const about = fresh.flatMap(({ seq, event }) => [...new Set(subjectsOf(event))].map((item_id) => ({ item_id, seq })));
  if (about.length > 0)
    await database
      .insertInto('event_subject')
      .columns(['item_id', 'seq'])
      .expression(sql`SELECT * FROM unnest(${about.map(({ item_id }) => item_id)}::text[], ${about.map(({ seq }) => seq)}::bigint[])`)
      .execute();
  for (const { seq, event } of fresh)
    if (!isForeign(event) && event.kind === 'correction') await follow(database, seq, event.body.corrects);
}

/** A correction is about what the event that it takes back is about. */
async function follow(database: Database, seq: number, corrects: string): Promise<void> {
  await database
    .insertInto('event_subject')
    .columns(['item_id', 'seq'])
    .expression((from) =>
      from
        .selectFrom('event_subject')
        .innerJoin('event', 'event.seq', 'event_subject.seq')
        .select((e) => ['event_subject.item_id', e.val(seq).as('seq')])
        .where('event.id', '=', corrects)
        .where('event.seq', '<', seq),
    )
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}
