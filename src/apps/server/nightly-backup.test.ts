import { expect, it } from 'vitest';
import { openBench } from '../../bench/open-bench.ts';
import type { Clock, PhotoStore } from '../../bench/ports.ts';
import { memoryBackups } from '../../bench/testing/memory-backups.ts';
import { memoryStore } from '../../bench/testing/memory-store.ts';
import { backUpIfDue, lastNight } from './nightly-backup.ts';

const photos: PhotoStore = {
  put: () => Promise.reject(new Error('not needed')),
  get: async () => null,
  list: async () => [],
  close: async () => undefined,
};

function nightlyParts() {
  let now = new Date(2026, 4, 1, 12);
  let id = 0;
  const clock: Clock = { now: () => now, newId: () => `019f0000-0000-7000-8000-${String((id += 1)).padStart(12, '0')}` };
  const bench = openBench({ store: memoryStore(), models: new Map(), clock, device: 'bench-1', version: '1' });
  const said: string[] = [];
  const backups = memoryBackups();
  const log = (sentence: string): void => void said.push(sentence);
  return { parts: { bench, photos, backups, clock, version: '1', log }, said, at: (time: Date) => void (now = time) };
}

const note = { kind: 'note-written', body: { text: 'a day of work' } };

it('knows when it was last three in the morning on the clock on the wall', () => {
  expect(lastNight(new Date(2026, 4, 1, 12))).toEqual(new Date(2026, 4, 1, 3));
  expect(lastNight(new Date(2026, 4, 1, 2, 59))).toEqual(new Date(2026, 3, 30, 3));
});

it('makes one backup a night in which something is new', async () => {
  const { parts, at } = nightlyParts();
  await backUpIfDue(parts);
  expect(parts.backups.kept.size).toBe(0);
  parts.bench.record([note]);
  await backUpIfDue(parts);
  await backUpIfDue(parts);
  expect(parts.backups.kept.size).toBe(1);
  at(new Date(2026, 4, 2, 3, 5));
  await backUpIfDue(parts);
  expect(parts.backups.kept.size).toBe(1);
  parts.bench.record([note]);
  await backUpIfDue(parts);
  expect(parts.backups.kept.size).toBe(2);
});

it('says why, when the folder is not there', async () => {
  const { parts, said } = nightlyParts();
  parts.bench.record([note]);
  parts.backups.list = async () => ({ ok: false, code: 'backup-folder-gone', where: '/stick', detail: 'there is no such folder' });
  await backUpIfDue(parts);
  expect(said).toEqual([expect.stringMatching(/^The folder of the backups, \/stick, is not there.*Plug in its disk/)]);
});
