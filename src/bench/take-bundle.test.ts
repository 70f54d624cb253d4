import { expect, it } from 'vitest';
import { openBench } from './open-bench.ts';
import type { PhotoStore } from './ports.ts';
import { takeBundle } from './take-bundle.ts';
import { oneLamp, testLog } from './testing/events.ts';
import { memoryStore } from './testing/memory-store.ts';
import { smallModels } from './testing/small-model.ts';
import { wholeLog } from './whole-log.ts';

const clock = { now: () => new Date(0), newId: () => '019f0000-0000-7000-8000-000000000001' };
const emptyBench = () => openBench({ store: memoryStore(), models: smallModels(), clock, device: 'b', version: '0' });
const events = testLog(...oneLamp).map(({ event }) => event);
const photo = { hash: 'a'.repeat(64), mediaType: 'image/png', widthPx: 1, heightPx: 1, bytes: 1, takenAt: null };

const photosThatTake = (isTaken: (name: string) => boolean): PhotoStore => ({
  put: async (name) =>
    isTaken(name) ? { ok: true, photo, duplicate: false } : { ok: false, code: 'photo-corrupt', name, detail: 'it ends early' },
  get: async () => null,
  list: async () => [],
  close: async () => undefined,
});
const bundle = { events, photos: ['a.png', 'b.png'].map((name) => ({ name, bytes: new Uint8Array(1) })) };

it('takes photos and log into an empty bench, and a second time not', async () => {
  const bench = emptyBench();
  const photos = photosThatTake(() => true);
  expect(await takeBundle(bench, photos, bundle)).toEqual({ ok: true, events: 2, photos: 2 });
  expect(wholeLog(bench)).toEqual(events);
  expect(await takeBundle(bench, photos, bundle)).toEqual({ ok: false, code: 'not-empty', events: 2 });
});

it('leaves the bench empty when one of the photos is not taken', async () => {
  const bench = emptyBench();
  expect(
    await takeBundle(
      bench,
      photosThatTake((name) => name !== 'b.png'),
      bundle,
    ),
  ).toMatchObject({ code: 'photo-corrupt', name: 'b.png' });
  expect(bench.overview().events).toBe(0);
});
