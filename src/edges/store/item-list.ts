import { sql } from 'kysely';
import type { ItemPage, ItemQuery } from '../../bench/ports.ts';
import type { ItemRow } from '../../bench/views/index.ts';
import { cursorAt, parseCursor, ranksOf } from './item-rank.ts';
import { matchOf } from './item-words.ts';
import { build, type Prepared, type Queries } from './queries.ts';
import type { Tables } from './tables.ts';

/** Reads the rows of the lists. */
export interface ItemList {
  /** A cursor that no page gave begins at the front. */
  page(query: ItemQuery): ItemPage;
  countByStatus(): Readonly<Record<string, number>>;
}

export function itemListOn(queries: Queries): ItemList {
  const lastBefore: LastBefore = queries.prepare((arg) =>
    build
      .selectFrom('item_row')
      .select((e) => e.fn.max('rank').as('rank'))
      .where('rank', '>=', arg('first'))
      .where('rank', '<=', arg('last'))
      .where('id', '<=', arg('id')),
  );
  return {
    page(query) {
      if (query.status?.length === 0) return { rows: [], next: null };
      const after = query.after === undefined ? 0 : rankAfter(lastBefore, query.after);
      const found = queries.all(pageQuery(query, after)).map(withoutRank);
      const rows = found.slice(0, query.limit);
      return { rows, next: found.length > rows.length && rows.length > 0 ? cursorAt(rows.at(-1)!) : null };
    },
    countByStatus: () =>
      Object.fromEntries(
        queries.all(build.selectFrom('item_count').selectAll().where('count', '>', 0)).map((row) => [row.status, row.count]),
      ),
  };
}

type LastBefore = Prepared<{ first: number; last: number; id: string }, { rank: number | null }>;

/** The rank of the last row that is at or before the cursor among the rows of the same change. */
function rankAfter(lastBefore: LastBefore, after: string): number {
  const cursor = parseCursor(after);
  if (cursor === null) return 0;
  const ranks = ranksOf(cursor.seq);
  return lastBefore.get({ ...ranks, id: cursor.id })?.rank ?? ranks.first - 1;
}

/** One row more than the page, to know whether there is a next one. */
function pageQuery(query: ItemQuery, after: number) {
  const match = matchOf(query);
  const limit = query.limit + 1;
  if (match === null) return build.selectFrom('item_row').selectAll().where('rank', '>', after).orderBy('rank').limit(limit);
  // The cast matters: the word index skips ahead only to a whole number, and the driver binds every number as a double.
  return build
    .selectFrom('item_word')
    .innerJoin('item_row', 'item_row.rank', 'item_word.rowid')
    .selectAll('item_row')
    .where(sql<boolean>`item_word MATCH ${match}`)
    .where('item_word.rowid', '>', sql<number>`CAST(${after} AS INTEGER)`)
    .$if(query.status !== undefined, (q) => q.where('item_row.status', 'in', query.status as ItemRow['status'][]))
    .$if(query.kind !== undefined, (q) => q.where('item_row.kind', '=', query.kind as ItemRow['kind']))
    .$if(query.model !== undefined, (q) => q.where('item_row.model_id', '=', query.model!))
    .$if(query.place !== undefined, (q) => q.where('item_row.place', '=', query.place!))
    .orderBy('item_word.rowid')
    .limit(limit);
}

const withoutRank = ({ rank: _rank, ...row }: Tables['item_row']): ItemRow => row;
