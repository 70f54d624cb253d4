import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, sql, type CompiledQuery } from 'kysely';
import type { ItemQuery } from '../../bench/ports.ts';
import { matchOf } from './item-words.ts';

/** The tables behind the list; the whole row stands in `row` as JSON. */
interface ListTables {
  item_row: { rank: number; id: string; status: string; kind: string; place: string; model_id: string; row: string };
  item_words: { rowid: number };
}

/** Builds SQL and never runs it: the store runs it on its own connection. */
const builder = new Kysely<ListTables>({
  dialect: {
    createAdapter: () => new SqliteAdapter(),
    createDriver: () => new DummyDriver(),
    createIntrospector: (db) => new SqliteIntrospector(db),
    createQueryCompiler: () => new SqliteQueryCompiler(),
  },
});

/**
 * The statement for one page: newest change first, at most `limit` rows below `rank`, in one status or in any. The order is that of the
 * primary key, of every index and of the word index, so that a page is read and never sorted, however deep.
 */
export function pageStatement(query: ItemQuery, status: string | undefined, belowRank: number | undefined, limit: number): CompiledQuery {
  const match = matchOf(query, status);
  return match === undefined ? listStatement(query, status, belowRank, limit) : searchStatement(match, belowRank, limit);
}

function listStatement(query: ItemQuery, status: string | undefined, belowRank: number | undefined, limit: number): CompiledQuery {
  let select = builder.selectFrom('item_row').select(['rank', 'row']).orderBy('rank', 'desc').limit(limit);
  if (belowRank !== undefined) select = select.where('rank', '<', belowRank);
  if (status !== undefined) select = select.where('status', '=', status);
  if (query.kind !== undefined) select = select.where('kind', '=', query.kind);
  if (query.place !== undefined) select = select.where('place', '=', query.place);
  if (query.model !== undefined) select = select.where('model_id', '=', query.model);
  return select.compile();
}

/** The cross join keeps the word index on the outside: its rows come in the order of the list, and it stops at the end of the page. */
function searchStatement(match: string, belowRank: number | undefined, limit: number): CompiledQuery {
  let select = builder
    .selectFrom('item_words')
    .crossJoin('item_row')
    .whereRef('item_row.rank', '=', 'item_words.rowid')
    .where(sql<boolean>`item_words MATCH ${match}`)
    .select(['item_row.rank', 'item_row.row'])
    .orderBy('item_words.rowid', 'desc')
    .limit(limit);
  if (belowRank !== undefined) select = select.where('item_words.rowid', '<', belowRank);
  return select.compile();
}
