import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { EventStore, ItemQuery } from '../../bench/ports.ts';
import { memoryStore } from '../../bench/testing/memory-store.ts';
import type { ItemRow } from '../../bench/views/index.ts';
import { openSqliteStore } from './sqlite-store.ts';
import { itemRow } from './store.contract.ts';

let dir: string;
let count = 0;
const newFile = (): string => join(dir, `store-${++count}.sqlite`);

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-list-'));
});
afterAll(() => rmSync(dir, { recursive: true, force: true }));

describe('the list in a file', () => {
  const filled = (...rows: ItemRow[]): EventStore => {
    const store = openSqliteStore(newFile());
    store.replaceRows(rows, { seq: 0, version: 1 });
    return store;
  };
  const put = (store: EventStore, ...rows: ItemRow[]): void => void store.append([], { put: rows, remove: [], version: 1 });
  const idsOf = (store: EventStore, query: Partial<ItemQuery>): string[] => store.items({ limit: 50, ...query }).rows.map(({ id }) => id);

  it('keeps a row in its place when it is written again without a later change', () => {
    const store = filled(itemRow(1), itemRow(2), itemRow(3));
    put(store, itemRow(2, { name: 'renamed' }));
    expect(idsOf(store, {})).toEqual(['item-3', 'item-2', 'item-1']);
    expect(idsOf(store, { search: 'renamed' })).toEqual(['item-2']);
    expect(idsOf(store, { search: 'player' })).toEqual(['item-3', 'item-1']);
    store.close();
  });

  it('puts a row that comes late among those of the same change by its id', () => {
    const store = filled(itemRow(2, { changed_seq: 5 }), itemRow(4, { changed_seq: 5 }), itemRow(9, { changed_seq: 6 }));
    put(store, itemRow(3, { changed_seq: 5 }), itemRow(1, { changed_seq: 5 }));
    expect(idsOf(store, {})).toEqual(['item-9', 'item-1', 'item-2', 'item-3', 'item-4']);
    expect(idsOf(store, { search: 'play', kind: 'unit' })).toEqual(['item-9', 'item-1', 'item-2', 'item-3', 'item-4']);
    store.close();
  });

  it('goes on after the last row of a page, whatever came, changed or went in between', () => {
    const store = filled(...[1, 2, 3, 4, 5].map((n) => itemRow(n, { changed_seq: 7 })));
    const { next } = store.items({ limit: 2 });
    store.append([], { put: [itemRow(0, { changed_seq: 7 }), itemRow(8, { changed_seq: 8 })], remove: ['item-2'], version: 1 });
    expect(idsOf(store, { after: next! })).toEqual(['item-3', 'item-4', 'item-5']);
    expect(idsOf(store, { after: next!, search: 'player' })).toEqual(['item-3', 'item-4', 'item-5']);
    store.close();
  });

  it('begins at the front after text that no page gave', () => {
    const store = filled(itemRow(1));
    expect(['', 'x', '-1.item-1', '99999999999999.item-1'].map((after) => idsOf(store, { after }))).toEqual(
      Array.from({ length: 4 }, () => ['item-1']),
    );
    store.close();
  });

  it('takes "#7" as the beginning of a stock number and 7 as that of any word', () => {
    const store = filled(itemRow(7, { name: 'lamp' }), itemRow(71, { name: 'lamp' }), itemRow(2, { name: '7-segment display' }));
    expect(idsOf(store, { search: '#7' })).toEqual(['item-71', 'item-7']);
    expect(idsOf(store, { search: '7' })).toEqual(['item-71', 'item-7', 'item-2']);
    store.close();
  });

  it('finds a word with accents by its plain letters, and a very long word by its first ones', () => {
    const store = filled(itemRow(1, { name: 'Réparé' }), itemRow(2, { name: 'x'.repeat(100) }));
    expect(idsOf(store, { search: 'repare' })).toEqual(['item-1']);
    expect(idsOf(store, { search: 'x'.repeat(60) })).toEqual(['item-2']);
    store.close();
  });

  it('tells models and places apart by case, and gives nothing for no status', () => {
    const store = filled(itemRow(1, { model_id: 'TN-1', place: 'Box' }), itemRow(2, { model_id: 'tn-1', place: 'box' }));
    expect([
      idsOf(store, { model: 'tn-1' }),
      idsOf(store, { place: 'Box' }),
      idsOf(store, { place: '' }),
      idsOf(store, { status: [] }),
    ]).toEqual([['item-2'], ['item-1'], [], []]);
    store.close();
  });

  it('agrees with the store in memory on random rows, changes and questions', () => {
    fc.assert(
      fc.property(
        fc.array(anyRow, { maxLength: 12 }),
        fc.array(anyRow, { maxLength: 12 }),
        fc.array(anyQuery, { minLength: 1, maxLength: 6 }),
        (rows, changes, queries) => {
          const [file, memory] = [filled(...latest(rows)), memoryStore()];
          memory.replaceRows(latest(rows), { seq: 0, version: 1 });
          for (const store of [file, memory]) for (const row of changes) put(store, row);
          for (const query of queries) expect(everyPage(file, query)).toEqual(everyPage(memory, query));
          expect(file.countByStatus()).toEqual(memory.countByStatus());
          file.close();
        },
      ),
      { numRuns: 40 },
    );
  });
});

const anyRow: fc.Arbitrary<ItemRow> = fc
  .record({
    n: fc.integer({ min: 1, max: 9 }),
    changed_seq: fc.integer({ min: 1, max: 4 }),
    name: fc.constantFrom('amber player', 'grey player', 'amber lamp'),
    status: fc.constantFrom('bought', 'listed', 'sold'),
    kind: fc.constantFrom('unit', 'assembly'),
    model_id: fc.constantFrom('tern-tn10', 'corrie-cp4'),
    place: fc.constantFrom('', 'item-1'),
  })
  .map(({ n, ...more }) => itemRow(n, more));

const anyQuery: fc.Arbitrary<ItemQuery> = fc.record(
  {
    search: fc.constantFrom('', 'amb', 'pla gre', 'tern', 'amber corrie', 'nothing'),
    status: fc.constantFrom(['bought'], ['listed', 'sold'], ['sold', 'sold']),
    kind: fc.constantFrom('unit', 'assembly'),
    model: fc.constantFrom('tern-tn10', 'corrie-cp4'),
    place: fc.constantFrom('', 'item-1'),
    limit: fc.integer({ min: 1, max: 4 }),
  },
  { requiredKeys: ['limit'] },
);

const latest = (rows: readonly ItemRow[]): ItemRow[] => [...new Map(rows.map((row) => [row.id, row])).values()];

function everyPage(store: EventStore, query: ItemQuery): ItemRow[] {
  const { rows, next } = store.items(query);
  return next === null ? [...rows] : [...rows, ...everyPage(store, { ...query, after: next })];
}
