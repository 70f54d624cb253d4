import { describe, expect, it } from 'vitest';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { EventStore, ItemQuery } from '../../bench/ports.ts';
import type { SharedStore } from '../../bench/ports-shared.ts';
import type { ItemRow } from '../../bench/views/index.ts';

const NO_ROWS = { put: [], remove: [], version: 1 };

export const noteEvent = (n: number, text = `note ${n}`): AnyEvent => ({
  id: `01890000-0000-7000-8000-${String(n).padStart(12, '0')}`,
  at: '2026-05-01T09:00:00Z',
  device: 'desk',
  version: 1,
  kind: 'note-written',
  body: { text },
});

export const itemRow = (n: number, more: Partial<ItemRow> = {}): ItemRow => ({
  id: `item-${n}`,
  number: n,
  name: `player ${n}`,
  kind: 'unit',
  model_id: 'tern-tn10',
  status: 'bought',
  lot_id: 'lot-1',
  lot_title: 'Box of three',
  seller: 'quay auctions',
  place: '',
  slot: '',
  cost_minor: 1200,
  grade: '',
  changed_at: '2026-05-01T09:00:00Z',
  changed_seq: n,
  ...more,
});

/** A store that answers at once or later. */
type AnyStore = EventStore | SharedStore;

/** A case of the contract: what is done with an empty store, and what is seen of it. */
export interface StoreCase {
  /** A sentence about stores. */
  readonly says: string;
  play(store: AnyStore): Promise<unknown>;
  readonly seen: unknown;
}

const idsOf = async (store: AnyStore, query: Partial<ItemQuery>): Promise<string[]> =>
  (await store.items({ limit: 50, ...query })).rows.map(({ id }) => id);
const put = async (store: AnyStore, ...rows: ItemRow[]): Promise<void> => store.replaceRows(rows, { seq: 0, version: 1 });
const inTurn = async <T, R>(list: readonly T[], work: (one: T) => Promise<R>): Promise<R[]> => {
  const results: R[] = [];
  for (const one of list) results.push(await work(one));
  return results;
};

const FOREIGN: AnyEvent = { ...noteEvent(3), version: 99, kind: 'moon-phase', body: { phase: [0.5, null, 'ü', '\u0000'] }, foreign: true };

/** What every store of events keeps to, whatever it stands on. */
export const STORE_CASES: readonly StoreCase[] = [
  {
    says: 'numbers events in the order of their arrival',
    play: async (store) => [
      await store.lastSeq(),
      await store.append([noteEvent(2), noteEvent(1)], NO_ROWS),
      (await store.read(0, 10)).map(({ seq, event }) => [seq, event.id]),
      await store.lastSeq(),
    ],
    seen: [
      0,
      [
        { id: noteEvent(2).id, seq: 1, duplicate: false },
        { id: noteEvent(1).id, seq: 2, duplicate: false },
      ],
      [
        [1, noteEvent(2).id],
        [2, noteEvent(1).id],
      ],
      2,
    ],
  },
  {
    says: 'gives back events as they were, those of unknown kinds too',
    play: async (store) => {
      await store.append([noteEvent(1, 'Ω and "quotes"\n'), FOREIGN], NO_ROWS);
      return (await store.read(0, 10)).map(({ event }) => event);
    },
    seen: [noteEvent(1, 'Ω and "quotes"\n'), FOREIGN],
  },
  {
    says: 'stores an event once, and answers a second sending with its first place',
    play: async (store) => {
      await store.append([noteEvent(1), noteEvent(2)], NO_ROWS);
      return [
        await store.append([noteEvent(2, 'changed'), noteEvent(3), noteEvent(3)], NO_ROWS),
        (await store.read(1, 1))[0]!.event.body,
        [...(await store.has([noteEvent(1).id, noteEvent(9).id]))],
      ];
    },
    seen: [
      [
        { id: noteEvent(2).id, seq: 2, duplicate: true },
        { id: noteEvent(3).id, seq: 3, duplicate: false },
        { id: noteEvent(3).id, seq: 3, duplicate: true },
      ],
      { text: 'note 2' },
      [noteEvent(1).id],
    ],
  },
  {
    says: 'reads on from any place, as much as is asked for',
    play: async (store) => {
      await store.append(
        [1, 2, 3, 4, 5].map((n) => noteEvent(n)),
        NO_ROWS,
      );
      return [(await store.read(2, 2)).map(({ seq }) => seq), await store.read(5, 2)];
    },
    seen: [[3, 4], []],
  },
  {
    says: 'writes rows with their events and says up to where they are made',
    play: async (store) => {
      await store.append([noteEvent(1)], { put: [itemRow(1), itemRow(2)], remove: [], version: 7 });
      const first = await store.rowsAt();
      await store.append([noteEvent(2)], { put: [itemRow(1, { name: 'renamed', changed_seq: 3 })], remove: ['item-2'], version: 7 });
      return [first, (await store.items({ limit: 9 })).rows, await store.countByStatus()];
    },
    seen: [{ seq: 1, version: 7 }, [itemRow(1, { name: 'renamed', changed_seq: 3 })], { bought: 1 }],
  },
  {
    says: 'lists the newest change first, and the smaller id first within one change',
    play: async (store) => {
      await put(store, itemRow(1), itemRow(3), itemRow(2, { changed_seq: 3 }), itemRow(20, { changed_seq: 3, id: 'Item-20' }));
      return idsOf(store, {});
    },
    seen: ['Item-20', 'item-2', 'item-3', 'item-1'],
  },
  {
    says: 'pages through a list without missing or repeating a row',
    play: async (store) => {
      await put(store, ...Array.from({ length: 7 }, (_, i) => itemRow(i + 1, { changed_seq: 1 + (i >> 1) })));
      const seen: string[] = [];
      let after: string | undefined;
      do {
        const page = await store.items({ limit: 3, ...(after === undefined ? {} : { after }) });
        seen.push(...page.rows.map(({ id }) => id), page.next === null ? 'end' : 'more');
        after = page.next ?? undefined;
      } while (after !== undefined);
      return seen;
    },
    seen: ['item-7', 'item-5', 'item-6', 'more', 'item-3', 'item-4', 'item-1', 'more', 'item-2', 'end'],
  },
  {
    says: 'finds items by the beginnings of words, all of them, without regard to case',
    play: async (store) => {
      await put(
        store,
        itemRow(1, { name: 'Amber player, boxed' }),
        itemRow(2, { name: 'Grey player' }),
        itemRow(31, { name: 'Cracked', lot_title: 'Größe' }),
      );
      return inTurn(['pla', 'AMB box', 'amber grey', '#31', '#3', '31', 'tern quay größ', 'gross', '  '], (search) =>
        idsOf(store, { search }),
      );
    },
    seen: [['item-2', 'item-1'], ['item-1'], [], ['item-31'], ['item-31'], ['item-31'], ['item-31'], [], ['item-31', 'item-2', 'item-1']],
  },
  {
    says: 'takes what a person types as words, never as a language of its own',
    play: async (store) => {
      await put(store, itemRow(1, { name: 'NOT near' }));
      return inTurn(['not', '"', '*', 'a OR b', 'NEAR(', '-', "' --", 'name:x', ':*', '!not', '\\', '\u0000'], (search) =>
        idsOf(store, { search }),
      );
    },
    seen: [['item-1'], ['item-1'], ['item-1'], [], ['item-1'], ['item-1'], ['item-1'], [], ['item-1'], ['item-1'], ['item-1'], ['item-1']],
  },
  {
    says: 'filters by status, kind, place and model, together with words and pages',
    play: async (store) => {
      await put(
        store,
        itemRow(1, { status: 'listed' }),
        itemRow(2, { status: 'sold', kind: 'assembly', place: 'item-1' }),
        itemRow(3, { status: 'listed', model_id: 'corrie-cp4' }),
        itemRow(4, { status: 'kept' }),
      );
      const first = await store.items({ status: ['listed', 'sold'], limit: 2 });
      return [
        ...(await inTurn(
          [
            { status: ['listed'] },
            { status: ['listed', 'sold'] },
            { status: ['listed'], model: 'corrie-cp4' },
            { kind: 'assembly' },
            { place: 'item-1' },
            { status: ['listed'], search: 'player 1' },
            { status: [] },
            { after: 'no cursor' },
          ],
          (query) => idsOf(store, query),
        )),
        await idsOf(store, { status: ['listed', 'sold'], limit: 2, after: first.next! }),
        await store.countByStatus(),
      ];
    },
    seen: [
      ['item-3', 'item-1'],
      ['item-3', 'item-2', 'item-1'],
      ['item-3'],
      ['item-2'],
      ['item-2'],
      ['item-1'],
      [],
      ['item-4', 'item-3', 'item-2', 'item-1'],
      ['item-1'],
      { listed: 2, sold: 1, kept: 1 },
    ],
  },
  {
    says: 'makes all rows anew on request',
    play: async (store) => {
      await put(store, itemRow(1), itemRow(2));
      await store.replaceRows([itemRow(5)], { seq: 4, version: 2 });
      return [await idsOf(store, {}), await idsOf(store, { search: 'player' }), await store.rowsAt(), await store.countByStatus()];
    },
    seen: [['item-5'], ['item-5'], { seq: 4, version: 2 }, { bought: 1 }],
  },
  {
    says: 'appends inside a stretch of work that is its own',
    play: async (store) => [await alone(store), await store.lastSeq()],
    seen: [1, 1],
  },
  {
    says: 'keeps nothing of a stretch of work that fails, and goes on',
    play: async (store) => {
      const mishap = await alone(store, 'a mishap of the caller').catch((error: Error) => error.message);
      return [mishap, await store.lastSeq(), await idsOf(store, {}), await alone(store)];
    },
    seen: ['a mishap of the caller', 0, [], 1],
  },
];

/** Appends an event and a row in a stretch of work of its own; the place of the event. */
async function alone(store: AnyStore, mishap?: string): Promise<number> {
  const rows = { put: [itemRow(1)], remove: [], version: 1 };
  const fail = (): void => {
    if (mishap !== undefined) throw new Error(mishap);
  };
  if ('watch' in store)
    return store.exclusively(async (within) => {
      const [appended] = await within.append([noteEvent(1)], rows);
      fail();
      return appended!.seq;
    });
  return store.exclusively(() => {
    const [appended] = store.append([noteEvent(1)], rows);
    fail();
    return appended!.seq;
  });
}

/** Runs the contract. `open` gives an empty store. */
export function storeContract(name: string, open: () => AnyStore | Promise<AnyStore>): void {
  describe(`the contract of stores, kept by ${name}: a store`, () => {
    it.each(STORE_CASES)('$says', async ({ play, seen }) => {
      const store = await open();
      expect(await play(store)).toEqual(seen);
      await store.close();
    });
  });
}
