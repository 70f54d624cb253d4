import { DummyDriver, Kysely, SqliteAdapter, SqliteIntrospector, SqliteQueryCompiler, sql, type CompiledQuery } from 'kysely';
import type { ItemQuery } from '../../bench/ports.ts';
import { matchOf } from './item-words.ts';

/** The columns of the list that are asked for; the whole row stands in `row` as JSON. */
interface ListTables {
  item_row: { rank: number; id: string; status: string; kind: string; place: string; model_id: string; row: string };
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
 * primary key and of every index, so that a page is read and never sorted, however deep.
 */
export function pageStatement(query: ItemQuery, status: string | undefined, belowRank: number | undefined, limit: number): CompiledQuery {
  const match = matchOf(query.search);
  let select = builder.selectFrom('item_row').select(['rank', 'row']).orderBy('rank', 'desc').limit(limit);
  if (match !== undefined) {
    const found = sql<number>`(SELECT rowid FROM item_words WHERE item_words MATCH ${match} ${below(belowRank)} ORDER BY rowid DESC)`;
    select = select.where('rank', 'in', found);
  }
  if (belowRank !== undefined) select = select.where('rank', '<', belowRank);
  if (status !== undefined) select = select.where('status', '=', status);
  if (query.kind !== undefined) select = select.where('kind', '=', query.kind);
  if (query.place !== undefined) select = select.where('place', '=', query.place);
  if (query.model !== undefined) select = select.where('model_id', '=', query.model);
  return select.compile();
}

const below = (rank: number | undefined) => (rank === undefined ? sql`` : sql`AND rowid < ${rank}`);
