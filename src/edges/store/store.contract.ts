import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { EventStore, ItemQuery } from '../../bench/ports.ts';
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

/** What every store of events keeps to, whatever it stands on. `open` gives an empty one. */
export function storeContract(name: string, open: () => EventStore): void {
  describe(`the contract of stores, kept by ${name}`, () => {
    let store: EventStore;
    beforeEach(() => (store = open()));
    afterEach(() => store.close());

    const idsOf = (query: Partial<ItemQuery>): string[] => store.items({ limit: 50, ...query }).rows.map(({ id }) => id);
    const put = (...rows: ItemRow[]): void => store.replaceRows(rows, { seq: 0, version: 1 });

    it('numbers events in the order of their arrival', () => {
      expect(store.lastSeq()).toBe(0);
      expect(store.append([noteEvent(2), noteEvent(1)], NO_ROWS).map(({ seq, duplicate }) => [seq, duplicate])).toEqual([
        [1, false],
        [2, false],
      ]);
      expect(store.read(0, 10).map(({ seq, event }) => [seq, event.id])).toEqual([
        [1, noteEvent(2).id],
        [2, noteEvent(1).id],
      ]);
      expect(store.lastSeq()).toBe(2);
    });

    it('gives back events as they were, those of unknown kinds too', () => {
      const foreign: AnyEvent = { ...noteEvent(3), version: 99, kind: 'moon-phase', body: { phase: [0.5, null, 'ü'] }, foreign: true };
      store.append([noteEvent(1, 'Ω and "quotes"\n'), foreign], NO_ROWS);
      expect(store.read(0, 10).map(({ event }) => event)).toEqual([noteEvent(1, 'Ω and "quotes"\n'), foreign]);
    });

    it('stores an event once, and answers a second sending with its first place', () => {
      store.append([noteEvent(1), noteEvent(2)], NO_ROWS);
      expect(store.append([noteEvent(2, 'changed'), noteEvent(3)], NO_ROWS)).toEqual([
        { id: noteEvent(2).id, seq: 2, duplicate: true },
        { id: noteEvent(3).id, seq: 3, duplicate: false },
      ]);
      expect(store.read(1, 1)[0]!.event.body).toEqual({ text: 'note 2' });
      expect(store.has([noteEvent(1).id, noteEvent(9).id])).toEqual(new Set([noteEvent(1).id]));
    });

    it('reads on from any place, as much as is asked for', () => {
      store.append(
        [1, 2, 3, 4, 5].map((n) => noteEvent(n)),
        NO_ROWS,
      );
      expect(store.read(2, 2).map(({ seq }) => seq)).toEqual([3, 4]);
      expect(store.read(5, 2)).toEqual([]);
    });

    it('writes rows with their events and says up to where they are made', () => {
      store.append([noteEvent(1)], { put: [itemRow(1), itemRow(2)], remove: [], version: 7 });
      expect(store.rowsAt()).toEqual({ seq: 1, version: 7 });
      store.append([noteEvent(2)], { put: [itemRow(1, { name: 'renamed', changed_seq: 3 })], remove: ['item-2'], version: 7 });
      expect(store.items({ limit: 9 }).rows).toEqual([itemRow(1, { name: 'renamed', changed_seq: 3 })]);
      expect(store.countByStatus()).toEqual({ bought: 1 });
    });

    it('lists the newest change first, and the smaller id first within one change', () => {
      put(itemRow(1), itemRow(3), itemRow(2, { changed_seq: 3 }));
      expect(idsOf({})).toEqual(['item-2', 'item-3', 'item-1']);
    });

    it('pages through a list without missing or repeating a row', () => {
      put(...Array.from({ length: 7 }, (_, i) => itemRow(i + 1)));
      const seen: string[] = [];
      let after: string | undefined;
      do {
        const page = store.items({ limit: 3, ...(after === undefined ? {} : { after }) });
        seen.push(...page.rows.map(({ id }) => id));
        after = page.next ?? undefined;
      } while (after !== undefined);
      expect(seen).toEqual([7, 6, 5, 4, 3, 2, 1].map((n) => `item-${n}`));
    });

    it('finds items by the beginnings of words, all of them, without regard to case', () => {
      put(
        itemRow(1, { name: 'Amber player, boxed' }),
        itemRow(2, { name: 'Grey player' }),
        itemRow(31, { name: 'Cracked', lot_title: 'Größe' }),
      );
      expect(idsOf({ search: 'pla' })).toEqual(['item-2', 'item-1']);
      expect(idsOf({ search: 'AMB box' })).toEqual(['item-1']);
      expect(idsOf({ search: 'amber grey' })).toEqual([]);
      expect(idsOf({ search: '#31' })).toEqual(['item-31']);
      expect(idsOf({ search: 'tern quay größ' })).toEqual(['item-31']);
      expect(idsOf({ search: '  ' })).toHaveLength(3);
    });

    it('takes what a person types as words, never as a language of its own', () => {
      put(itemRow(1, { name: 'NOT near' }));
      for (const search of ['"', '*', 'a OR b', 'NEAR(', '-', "' --", 'name:x']) expect(() => idsOf({ search })).not.toThrow();
      expect(idsOf({ search: 'not' })).toEqual(['item-1']);
    });

    it('filters by status, kind, place and model, together with words and pages', () => {
      put(
        itemRow(1, { status: 'listed' }),
        itemRow(2, { status: 'sold', kind: 'assembly', place: 'item-1' }),
        itemRow(3, { status: 'listed', model_id: 'corrie-cp4' }),
        itemRow(4, { status: 'kept' }),
      );
      expect(idsOf({ status: ['listed'] })).toEqual(['item-3', 'item-1']);
      expect(idsOf({ status: ['listed', 'sold'] })).toEqual(['item-3', 'item-2', 'item-1']);
      expect(idsOf({ status: ['listed'], model: 'corrie-cp4' })).toEqual(['item-3']);
      expect(idsOf({ kind: 'assembly' })).toEqual(['item-2']);
      expect(idsOf({ place: 'item-1' })).toEqual(['item-2']);
      expect(idsOf({ status: ['listed'], search: 'player 1' })).toEqual(['item-1']);
      const first = store.items({ status: ['listed', 'sold'], limit: 2 });
      expect(store.items({ status: ['listed', 'sold'], limit: 2, after: first.next! }).rows.map(({ id }) => id)).toEqual(['item-1']);
      expect(store.countByStatus()).toEqual({ listed: 2, sold: 1, kept: 1 });
    });

    it('makes all rows anew on request', () => {
      put(itemRow(1), itemRow(2));
      store.replaceRows([itemRow(5)], { seq: 4, version: 2 });
      expect(idsOf({})).toEqual(['item-5']);
      expect(idsOf({ search: 'player' })).toEqual(['item-5']);
      expect(store.rowsAt()).toEqual({ seq: 4, version: 2 });
      expect(store.countByStatus()).toEqual({ bought: 1 });
    });

    it('appends inside a stretch of work that is its own', () => {
      const seq = store.exclusively(() => store.append([noteEvent(1)], NO_ROWS)[0]!.seq);
      expect(seq).toBe(store.lastSeq());
    });
  });
}
