import { sql } from 'kysely';
import type { ItemPage, ItemQuery, RowChanges } from '../../../bench/ports.ts';
import type { ItemRow } from '../../../bench/views/index.ts';
import { cursorAt, parseCursor } from '../item-rank.ts';
import { beginningsOf, beginningsWanted } from '../item-words.ts';
import type { MetaName } from '../tables.ts';
import type { Database } from './database.ts';
import { AT_ONCE } from './event-table.ts';
import { storable } from './storable.ts';

const TEXTS = [
  'id',
  'name',
  'kind',
  'model_id',
  'status',
  'lot_id',
  'lot_title',
  'seller',
  'place',
  'slot',
  'grade',
  'changed_at',
] as const;
const NUMBERS = ['number', 'cost_minor', 'changed_seq'] as const;
const COLUMNS = [...TEXTS, ...NUMBERS];

/** A row that is put again is taken out first, so that the counts of the lists see both. */
export async function changeRows(database: Database, { put, remove }: Pick<RowChanges, 'put' | 'remove'>): Promise<void> {
  const rows = [...new Map(put.map((row) => [row.id, row])).values()];
  const gone = [...remove, ...rows.map(({ id }) => id)];
  if (gone.length > 0)
    await database
      .deleteFrom('item_row')
      .where('id', '=', sql<string>`ANY(${gone}::text[])`)
      .execute();
  for (let i = 0; i < rows.length; i += AT_ONCE) await insert(database, rows.slice(i, i + AT_ONCE));
}

export async function replaceAllRows(database: Database, rows: readonly ItemRow[]): Promise<void> {
  await database.deleteFrom('item_row').execute();
  await changeRows(database, { put: rows, remove: [] });
}

async function insert(database: Database, rows: readonly ItemRow[]): Promise<void> {
  const texts = TEXTS.map((name) => sql`${rows.map((row) => (row[name] === null ? null : storable(row[name])))}::text[]`);
  const numbers = NUMBERS.map((name) => sql`${rows.map((row) => row[name])}::bigint[]`);
  // An array of arrays must have equal lengths in PostgreSQL, so the words of a row travel as one text.
  const words = sql`${rows.map((row) => [...beginningsOf(row)].join(' '))}::text[]`;
  const names = sql.join([...COLUMNS, 'words'].map((name) => sql.ref(name)));
  await database
    .insertInto('item_row')
    .columns([...COLUMNS, 'words'])
    .expression(
      sql`SELECT ${sql.join(COLUMNS.map((name) => sql.ref(name)))}, array_to_tsvector(string_to_array(words, ' '))
        FROM unnest(${sql.join([...texts, ...numbers, words])}) AS given (${names})`,
    )
    .execute();
}

export async function rowsMadeFrom(database: Database): Promise<{ readonly seq: number; readonly version: number }> {
  const known = new Map((await database.selectFrom('meta').selectAll().execute()).map(({ name, value }) => [name, value]));
  return { seq: known.get('rows_seq')!, version: known.get('rows_version')! };
}

export async function setRowsMadeFrom(
  database: Database,
  { seq, version }: { readonly seq: number; readonly version: number },
): Promise<void> {
  await database
    .updateTable('meta')
    .set({ value: sql<number>`CASE name WHEN 'rows_seq' THEN ${seq}::bigint ELSE ${version}::bigint END` })
    .where('name', 'in', ['rows_seq', 'rows_version'] satisfies MetaName[])
    .execute();
}

export async function countItems(database: Database): Promise<Readonly<Record<string, number>>> {
  const rows = await database.selectFrom('item_count').selectAll().where('count', '>', 0).execute();
  return Object.fromEntries(rows.map(({ status, count }) => [status, count]));
}

/** A cursor that no page gave begins at the front, as in the embedded store. */
export async function itemPage(database: Database, query: ItemQuery): Promise<ItemPage> {
  if (query.status?.length === 0) return { rows: [], next: null };
  const found = await pageQuery(database, query).execute();
  const rows = found.slice(0, query.limit);
  return { rows, next: found.length > rows.length && rows.length > 0 ? cursorAt(rows.at(-1)!) : null };
}

/** Rows of all items that the events about one item are about. */
export const mentionedQuery = (database: Database, itemId: string) =>
  database
    .selectFrom('item_row')
    .select([...COLUMNS])
    .where('id', 'in', (mentioned) =>
      mentioned
        .selectFrom('event_subject as about')
        .innerJoin('event_subject as other', 'other.seq', 'about.seq')
        .select('other.item_id')
        .where('about.item_id', '=', itemId),
    );

/** One row more than the page, to know whether there is a next one. */
export function pageQuery(database: Database, query: ItemQuery) {
  const cursor = query.after === undefined ? null : parseCursor(query.after);
  // Beginnings are words of the index, not prefixes of one: only so does PostgreSQL know how rare a beginning is, and which way is short.
  const wanted = beginningsWanted(query).map((word) => `'${word}'`);
  return database
    .selectFrom('item_row')
    .select([...COLUMNS])
    .$if(wanted.length > 0, (q) => q.where(sql<boolean>`words @@ ${wanted.join(' & ')}::tsquery`))
    .$if(query.status !== undefined, (q) => q.where('status', 'in', query.status as ItemRow['status'][]))
    .$if(query.kind !== undefined, (q) => q.where('kind', '=', query.kind as ItemRow['kind']))
    .$if(query.model !== undefined, (q) => q.where('model_id', '=', query.model!))
    .$if(query.place !== undefined, (q) => q.where('place', '=', query.place!))
    .$if(cursor !== null, (q) =>
      q.where('changed_seq', '<=', cursor!.seq).where((e) => e.or([e('changed_seq', '<', cursor!.seq), e('id', '>', cursor!.id)])),
    )
    .orderBy('changed_seq', 'desc')
    .orderBy('id')
    .limit(query.limit + 1);
}
