import { expect, test } from 'vitest';
import { stateText } from '../state-text.ts';
import type { Clock } from '../ports.ts';
import { sharedMemoryStore } from '../testing/shared-store.ts';
import { smallModels } from '../testing/small-model.ts';
import { openSharedBench, type SharedBench } from './open-shared-bench.ts';

let ids = 0;
const clock: Clock = {
  now: () => new Date('2026-05-01T09:00:00Z'),
  newId: () => `01890000-0000-7000-8000-${String(++ids).padStart(12, '0')}`,
};
const open = (shared = sharedMemoryStore()): Promise<SharedBench> =>
  openSharedBench({ shared, models: smallModels(), clock, device: 'bench-1', version: '1' });
const note = (text: string) => ({ kind: 'note-written', body: { text } });
const lot = (n: number) => ({
  kind: 'lot-bought',
  body: {
    lot_id: `lot-${n}`,
    title: 'A lot',
    seller: 'quay auctions',
    price_minor: 1000,
    currency: 'GBP',
    items: [{ item_id: `lamp-${n}`, name: `lamp ${n}`, model_id: 'lamp-1', expected_value_minor: 900 }],
  },
});

test('what one process has stored is known to the other when it is asked, and both have one state', async () => {
  const shared = sharedMemoryStore();
  const [left, right] = [await open(shared), await open(shared)];
  expect(await left.door.record([lot(1), note('left')])).toMatchObject({ ok: true, stored: [{ seq: 1 }, { seq: 2 }] });
  await right.door.fresh();
  expect(right.bench.state().seq).toBe(2);
  expect(await right.door.record([note('right')])).toMatchObject({ ok: true, stored: [{ seq: 3 }] });
  await left.door.fresh();
  expect(stateText(left.bench.state())).toBe(stateText(right.bench.state()));
  expect((await left.door.items({ limit: 9 })).rows).toMatchObject([{ id: 'lamp-1' }]);
});

test('another process is heard of without being asked for', async () => {
  const shared = sharedMemoryStore();
  const [left, right] = [await open(shared), await open(shared)];
  await left.door.record([note('left')]);
  await right.close();
  expect(right.bench.state().seq).toBe(1);
});

test('a rule is judged by what all processes have stored', async () => {
  const shared = sharedMemoryStore();
  const [left, right] = [await open(shared), await open(shared)];
  await left.door.record([lot(1)]);
  const sale = { kind: 'sold', body: { item_id: 'lamp-1', as: 'for-parts', price_minor: 1, currency: 'GBP' } };
  const sales = await Promise.all([left.door.record([sale]), right.door.record([sale])]);
  expect(sales.map(({ ok }) => ok).toSorted()).toEqual([false, true]);
  expect(sales.find(({ ok }) => !ok)).toMatchObject({ code: 'item-gone' });
});

test('batches that wait go in one transaction, and one that is refused leaves the others', async () => {
  const shared = sharedMemoryStore();
  const { door } = await open(shared);
  const before = shared.commits();
  const first = door.record([note('first')]);
  const rest = await Promise.all([
    door.record([note('second')]),
    door.record([{ kind: 'kept', body: { item_id: 'nobody' } }]),
    door.record([note('third')]),
  ]);
  await first;
  expect(rest).toMatchObject([
    { ok: true, stored: [{ seq: 2 }] },
    { ok: false, code: 'unknown-item' },
    { ok: true, stored: [{ seq: 3 }] },
  ]);
  expect(shared.commits() - before).toBe(2);
});

test('when a commit fails everybody who waited for it is told, memory is as before, and the next one goes through', async () => {
  const shared = sharedMemoryStore();
  const { bench, door } = await open(shared);
  await door.record([lot(1)]);
  const before = stateText(bench.state());
  shared.failCommits(1);
  await expect(door.record([lot(2)])).rejects.toThrow('the connection broke');
  expect(stateText(bench.state())).toBe(before);
  expect(await door.record([lot(3)])).toMatchObject({ ok: true, stored: [{ seq: 2 }] });
  expect((await door.items({ limit: 9 })).rows.map(({ id }) => id)).toEqual(['lamp-3', 'lamp-1']);
});

test('an event that is sent again after an answer got lost is stored once', async () => {
  const { door } = await open();
  const event = { ...note('once'), id: clock.newId() };
  await door.record([event]);
  expect(await door.record([event, event])).toMatchObject({
    ok: true,
    stored: [
      { seq: 1, duplicate: true },
      { seq: 1, duplicate: true },
    ],
  });
});

test('of two processes that bring a whole log into an empty bench only one may', async () => {
  const shared = sharedMemoryStore();
  const [left, right] = [await open(shared), await open(shared)];
  const event = {
    id: clock.newId(),
    at: '2026-05-01T09:00:00Z',
    device: 'desk',
    version: 1,
    kind: 'note-written',
    body: { text: 'x' },
  } as const;
  const taken = await Promise.all([left.door.adopt([event]), right.door.adopt([{ ...event, id: clock.newId() }])]);
  expect(taken.map(({ ok }) => ok).toSorted()).toEqual([false, true]);
});

test('rows that an older version made, or a crash left behind, are made anew when the bench opens', async () => {
  const shared = sharedMemoryStore();
  const { door } = await open(shared);
  await door.record([lot(1)]);
  await shared.replaceRows([], { seq: 1, version: 0 });
  const again = await open(shared);
  expect((await again.door.items({ limit: 9 })).rows).toMatchObject([{ id: 'lamp-1' }]);
});
