import * as fc from 'fast-check';
import { expect, test } from 'vitest';
import type { AnyEvent } from '../events/index.ts';
import { foldLog } from '../fold/index.ts';
import type { EventStore } from '../ports.ts';
import { rowOf } from '../row-of.ts';
import { stateText } from '../state-text.ts';
import { anyLog } from '../testing/any-event.ts';
import { oneLamp, testEvent, testId, testLog, type Step } from '../testing/events.ts';
import { memoryStore } from '../testing/memory-store.ts';
import { smallModels } from '../testing/small-model.ts';
import { adopt } from './adopt.ts';
import { catchUp, emptyLive } from './live-log.ts';
import { record, type Recording } from './record.ts';

const models = smallModels();

function opened(store: EventStore = memoryStore()): Recording & { readonly store: EventStore } {
  let made = 0;
  const clock = { now: () => new Date('2026-03-01T10:00:00Z'), newId: () => testId(5000 + made++) };
  const live = emptyLive(models);
  catchUp(live, store);
  return { live, store, clock, device: 'bench-1', proofSteps: () => ({ steps: [], ready: true }), boardPoints: () => [] };
}

const events = (...steps: readonly Step[]): AnyEvent[] => testLog(...steps).map(({ event }) => event);
const rowsIn = (store: EventStore) => store.items({ limit: 1e6 }).rows.toSorted((a, b) => (a.id < b.id ? -1 : 1));
const rowsOf = ({ live }: Recording) => {
  const items = [...live.state.items.values()];
  return items.map((item) => rowOf(live.state, item)).toSorted((a, b) => (a.id < b.id ? -1 : 1));
};
const refused = ['item-received', { item_id: 'nobody' }] as const;

test('a batch is stored in order, with the rows that it changes', () => {
  const bench = opened();
  expect(record(bench, events(...oneLamp))).toEqual({
    ok: true,
    stored: [
      { id: testId(1), seq: 1, duplicate: false },
      { id: testId(2), seq: 2, duplicate: false },
    ],
  });
  expect(rowsIn(bench.store)).toMatchObject([{ id: 'lamp-a', status: 'on-the-bench', cost_minor: 2400, seller: 'marsh-lane' }]);
});

test('one refused event refuses its whole batch, and the state is as before', () => {
  const bench = opened();
  record(bench, events(oneLamp[0]));
  const before = stateText(bench.live.state);
  const batch = events(oneLamp[0], oneLamp[1], ['correction', { corrects: testId(1) }], refused).slice(1);
  expect(record(bench, batch)).toMatchObject({ ok: false, code: 'unknown-item', index: 2, field: 'body.item_id' });
  expect([bench.store.lastSeq(), bench.live.log.length, bench.live.byId.size]).toEqual([1, 1, 1]);
  expect(bench.live.byItem.get('lamp-a')).toHaveLength(1);
  expect(stateText(bench.live.state)).toBe(before);
});

test('an event that does not fit its schema is refused by its place in the batch and its field', () => {
  const bench = opened();
  const bad = { ...testEvent(2, 'item-received', { item_id: 'lamp-a' }), body: { item_id: 'lamp a' } };
  expect(record(bench, [...events(oneLamp[0]), bad])).toMatchObject({ ok: false, code: 'bad-event', index: 1, field: 'body.item_id' });
  expect(bench.store.lastSeq()).toBe(0);
});

test('the same event sent twice is stored once, in one batch or in two', () => {
  const bench = opened();
  const [bought] = events(oneLamp[0]);
  record(bench, [bought]);
  expect(record(bench, [bought, ...events(...oneLamp).slice(1), bought])).toMatchObject({
    ok: true,
    stored: [
      { seq: 1, duplicate: true },
      { seq: 2, duplicate: false },
      { seq: 1, duplicate: true },
    ],
  });
  expect(bench.store.lastSeq()).toBe(2);
});

test('an event may lean on those before it in its batch', () => {
  const bench = opened();
  const swap = events(
    ...oneLamp,
    ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }],
    ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: null, to_item: 'lamp-a' }],
  );
  expect(record(bench, swap)).toMatchObject({ ok: true });
});

test('what is left out of the envelope is filled in from the clock and the device', () => {
  const bench = opened();
  record(bench, [{ kind: 'bench-set', body: { name: 'Quay bench' } }]);
  expect(bench.live.log[0]!.event).toMatchObject({ id: testId(5000), at: '2026-03-01T10:00:00.000Z', device: 'bench-1', version: 1 });
});

test('the share of cost that leaves with an assembly is written into the log', () => {
  const bench = opened();
  record(bench, events(...oneLamp, ['transplant-done', { assembly_id: 'board-a', slot: 'board', from_item: 'lamp-a', to_item: null }]));
  expect(bench.store.read(2, 1)[0]!.event.body).toMatchObject({ cost_share: 0.75 });
});

test('an undo changes the rows of what it undoes, and takes away the rows of what is gone', () => {
  const bench = opened();
  record(bench, events(...oneLamp));
  record(bench, events(...oneLamp, ['correction', { corrects: testId(2) }]).slice(2));
  expect(rowsIn(bench.store)).toMatchObject([{ id: 'lamp-a', status: 'bought' }]);
  record(bench, [testEvent(4, 'correction', { corrects: testId(1) })]);
  expect(rowsIn(bench.store)).toEqual([]);
});

test('a store that fails leaves the memory as it was', () => {
  const bench = opened();
  record(bench, events(...oneLamp));
  const before = stateText(bench.live.state);
  const failing = {
    ...bench,
    store: {
      ...bench.store,
      append: () => {
        throw new Error('disk full');
      },
    },
  };
  expect(() => record(failing, [testEvent(3, 'kept', { item_id: 'lamp-a' })])).toThrow('disk full');
  expect(stateText(bench.live.state)).toBe(before);
  expect(record(bench, [testEvent(3, 'kept', { item_id: 'lamp-a' })])).toMatchObject({ ok: true, stored: [{ seq: 3 }] });
});

test('a store that fails at the very end, when all of a batch is to be made lasting, leaves the memory as it was', () => {
  const bench = opened();
  record(bench, events(...oneLamp));
  const before = stateText(bench.live.state);
  const store: EventStore = {
    ...bench.store,
    append: (all) => all.map(({ id }, index) => ({ id, seq: bench.store.lastSeq() + index + 1, duplicate: false })),
    exclusively: (work) => {
      work();
      throw new Error('disk full');
    },
  };
  expect(() => record({ ...bench, store }, [testEvent(3, 'kept', { item_id: 'lamp-a' })])).toThrow('disk full');
  expect(stateText(bench.live.state)).toBe(before);
  expect(record(bench, [testEvent(3, 'kept', { item_id: 'lamp-a' })])).toMatchObject({ ok: true, stored: [{ seq: 3 }] });
});

test('two benches on one store see what the other appended before they judge', () => {
  const store = memoryStore();
  const [desk, phone] = [opened(store), opened(store)];
  record(desk, events(...oneLamp));
  const sale = { item_id: 'lamp-a', as: 'for-parts', price_minor: 1, currency: 'GBP' } as const;
  expect(record(phone, [testEvent(3, 'sold', sale, 'phone')])).toMatchObject({ ok: true, stored: [{ seq: 3 }] });
  expect(record(desk, [testEvent(4, 'sold', sale)])).toMatchObject({ ok: false, code: 'item-gone' });
  record(phone, [testEvent(5, 'correction', { corrects: testId(3) }, 'phone')]);
  catchUp(desk.live, store);
  expect(stateText(desk.live.state)).toBe(stateText(phone.live.state));
});

test('an event of a kind from a newer version is kept', () => {
  const bench = opened();
  const newer = { id: testId(1), at: '2026-01-01T00:00:00Z', device: 'phone', version: 7, kind: 'x-rayed', body: { item_id: 'lamp-a' } };
  expect(record(bench, [newer])).toMatchObject({ ok: true });
  expect(bench.live.state.foreign).toMatchObject([{ kind: 'x-rayed', body: { item_id: 'lamp-a' } }]);
});

test('whatever is sent, the rows and the state in memory are those of the stored log', () => {
  fc.assert(
    fc.property(anyLog(), fc.integer({ min: 1, max: 4 }), (log, size) => {
      const bench = opened();
      for (let i = 0; i < log.length; i += size) {
        record(
          bench,
          log.slice(i, i + size).map(({ event }) => event),
        );
      }
      const stored = bench.store.read(0, 1e6);
      expect(stateText(bench.live.state)).toBe(stateText(foldLog(stored, models)));
      expect(rowsIn(bench.store)).toEqual(rowsOf(bench));
      expect([...bench.live.byItem.values()].flat().every((about) => bench.live.byId.get(about.event.id) === about)).toBe(true);
    }),
    { numRuns: 200 },
  );
});

test('what the rules take is folded: it never becomes an orphan at once', () => {
  fc.assert(
    fc.property(anyLog(), (log) => {
      const bench = opened();
      for (const { event } of log) {
        if (event.kind === 'correction' || event.kind === 'demo-put-away') continue;
        const taken = record(bench, [event]);
        if (taken.ok) expect(bench.live.state.orphans).toEqual([]);
      }
    }),
    { numRuns: 300 },
  );
});

test('a log from elsewhere is adopted as it is into an empty bench, and gives the same state', () => {
  const from = opened();
  record(from, events(...oneLamp, ['time-clocked', { minutes: 5, task: 'tidying' }]));
  const to = opened();
  const log = from.store.read(0, 10).map(({ event }) => event);
  expect(adopt(to.live, to.store, [...log, log[0]!])).toMatchObject({ ok: true, stored: [{ seq: 1 }, { seq: 2 }, { seq: 3 }] });
  expect(stateText(to.live.state)).toBe(stateText(from.live.state));
  expect(rowsIn(to.store)).toEqual(rowsIn(from.store));
});

test('a log is not adopted into a bench that holds anything', () => {
  const bench = opened();
  record(bench, events(oneLamp[0]));
  expect(adopt(bench.live, bench.store, events(...oneLamp))).toMatchObject({ ok: false, code: 'bench-not-empty', field: 'events' });
  expect(bench.store.lastSeq()).toBe(1);
});
