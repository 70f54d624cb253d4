import { sql } from 'kysely';
import type { RowChanges } from '../../bench/ports.ts';
import type { ItemRow } from '../../bench/views/index.ts';
import { ranksOf } from './item-rank.ts';
import { wordsOf } from './item-words.ts';
import { build, type Prepared, type Queries } from './queries.ts';
import type { MetaName, Tables } from './tables.ts';

type Ranked = Tables['item_row'];

/** The rows of the lists and their words. All of it runs inside the transaction of the caller. */
export interface ItemRows {
  change(changes: Pick<RowChanges, 'put' | 'remove'>): void;
  replaceAll(rows: readonly ItemRow[]): void;
  madeFrom(): { readonly seq: number; readonly version: number };
  setMadeFrom(at: { readonly seq: number; readonly version: number }): void;
}

export function itemRowsOn(queries: Queries): ItemRows {
  const statements = rowStatements(queries);
  const metaValue = (name: MetaName): number => statements.meta.get({ name })!.value;
  return {
    change({ put, remove }) {
      for (const id of remove) takeOut(statements, statements.byId.get({ id }));
      putRows(statements, put);
    },
    replaceAll(rows) {
      statements.clearRows.run({});
      statements.clearWords.run({});
      putRows(statements, rows);
    },
    madeFrom: () => ({ seq: metaValue('rows_seq'), version: metaValue('rows_version') }),
    setMadeFrom({ seq, version }) {
      statements.setMeta.run({ name: 'rows_seq', value: seq });
      statements.setMeta.run({ name: 'rows_version', value: version });
    },
  };
}

const COLUMNS = [
  'rank',
  'id',
  'number',
  'name',
  'kind',
  'model_id',
  'status',
  'lot_id',
  'lot_title',
  'seller',
  'place',
  'slot',
  'cost_minor',
  'grade',
  'changed_at',
  'changed_seq',
] as const satisfies readonly (keyof Ranked)[];

interface Statements {
  readonly byId: Prepared<{ id: string }, Ranked>;
  readonly between: Prepared<{ first: number; last: number }, Ranked>;
  readonly insert: Prepared<Ranked, unknown>;
  readonly remove: Prepared<{ rank: number }, unknown>;
  readonly insertWords: Prepared<{ rank: number; words: string }, unknown>;
  readonly removeWords: Prepared<{ rank: number }, unknown>;
  readonly clearRows: Prepared<object, unknown>;
  readonly clearWords: Prepared<object, unknown>;
  readonly meta: Prepared<{ name: MetaName }, { value: number }>;
  readonly setMeta: Prepared<{ name: MetaName; value: number }, unknown>;
}

const rowStatements = (queries: Queries): Statements => ({
  byId: queries.prepare((arg) => build.selectFrom('item_row').selectAll().where('id', '=', arg('id'))),
  between: queries.prepare((arg) =>
    build.selectFrom('item_row').selectAll().where('rank', '>=', arg('first')).where('rank', '<=', arg('last')),
  ),
  insert: queries.prepare((arg) =>
    build.insertInto('item_row').values(Object.fromEntries(COLUMNS.map((column) => [column, arg(column)])) as unknown as Ranked),
  ),
  remove: queries.prepare((arg) => build.deleteFrom('item_row').where('rank', '=', arg('rank'))),
  insertWords: queries.prepare((arg) =>
    build
      .insertInto('item_word')
      .columns(['rowid', 'words'])
      .expression(sql`SELECT ${arg('rank')}, ${arg('words')}`),
  ),
  removeWords: queries.prepare((arg) => build.deleteFrom('item_word').where('rowid', '=', arg('rank'))),
  clearRows: queries.prepare(() => build.deleteFrom('item_row')),
  // A command of FTS5: empties the index at once.
  clearWords: queries.prepare(() =>
    build
      .insertInto('item_word')
      .columns(['item_word'])
      .expression(sql`SELECT 'delete-all'`),
  ),
  meta: queries.prepare((arg) => build.selectFrom('meta').select('value').where('name', '=', arg('name'))),
  setMeta: queries.prepare((arg) =>
    build
      .updateTable('meta')
      .set({ value: arg('value') })
      .where('name', '=', arg('name')),
  ),
});

/** A row whose last change stays the same keeps its rank; the others come to stand among the rows of their change. */
function putRows(statements: Statements, rows: readonly ItemRow[]): void {
  const newcomers = new Map<number, ItemRow[]>();
  for (const row of new Map(rows.map((one) => [one.id, one])).values()) {
    const old = statements.byId.get({ id: row.id });
    takeOut(statements, old);
    if (old?.changed_seq === row.changed_seq) bringIn(statements, row, old.rank);
    else newcomers.set(row.changed_seq, [...(newcomers.get(row.changed_seq) ?? []), row]);
  }
  // Ascending ranks: the word index takes many rows at once only in this order.
  for (const [seq, group] of [...newcomers].sort(([a], [b]) => b - a)) placeGroup(statements, seq, group);
}

function placeGroup(statements: Statements, seq: number, newcomers: readonly ItemRow[]): void {
  const { first, last } = ranksOf(seq);
  const present = statements.between.all({ first, last });
  for (const row of present) takeOut(statements, row);
  const group = [...present, ...newcomers].sort((a, b) => (a.id < b.id ? -1 : 1));
  for (const [index, row] of group.entries()) bringIn(statements, row, first + index);
}

function takeOut(statements: Statements, row: Ranked | undefined): void {
  if (row === undefined) return;
  statements.remove.run({ rank: row.rank });
  statements.removeWords.run({ rank: row.rank });
}

function bringIn(statements: Statements, row: ItemRow, rank: number): void {
  statements.insert.run({ ...row, rank });
  statements.insertWords.run({ rank, words: wordsOf(row) });
}
