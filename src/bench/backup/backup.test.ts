import { beforeEach, describe, expect, it } from 'vitest';
import type { Bench } from '../bench.ts';
import { openBench } from '../open-bench.ts';
import type { Backup, Clock, PhotoStore } from '../ports.ts';
import { oneLamp } from '../testing/events.ts';
import { memoryBackups } from '../testing/memory-backups.ts';
import { memoryStore } from '../testing/memory-store.ts';
import { smallModels } from '../testing/small-model.ts';
import { backupsToRemove, isBackupDue, makeBackup, restoreBackup, tryBackup } from './index.ts';

const backupAt = (madeAt: string): Backup => ({ name: madeAt, madeAt, events: 1, bytes: 1 });
const days = (count: number): Backup[] =>
  Array.from({ length: count }, (_, i) => backupAt(new Date(Date.UTC(2026, 4, 30 - i, 3)).toISOString()));

describe('rotation', () => {
  it('keeps everything of a week', () => {
    expect(backupsToRemove(days(7))).toEqual([]);
  });

  it('keeps of a year of nights the last seven, one a week of five weeks and one a month of twelve', () => {
    const nights = days(366);
    const removed = new Set(backupsToRemove(nights));
    const kept = nights.filter(({ name }) => !removed.has(name));
    expect(kept.slice(0, 7)).toEqual(nights.slice(0, 7));
    expect(new Set(kept.map(({ madeAt }) => madeAt.slice(0, 7))).size).toBe(12);
    // Seven days, three more ends of weeks (one week ends within the seven days), eleven more ends of months less one that ends a kept week.
    expect(kept.length).toBeGreaterThanOrEqual(20);
    expect(kept.length).toBeLessThanOrEqual(24);
  });

  it('keeps the newest three of one day, and the newest one however old it is', () => {
    const sameDay = [1, 2, 3, 4, 5].map((hour) => backupAt(`2026-05-01T0${hour}:00:00Z`));
    expect(backupsToRemove(sameDay)).toEqual(['2026-05-01T02:00:00Z', '2026-05-01T01:00:00Z']);
    expect(backupsToRemove([backupAt('1999-01-01T00:00:00Z')])).toEqual([]);
  });
});

describe('the nightly backup', () => {
  const plan = { folder: null, nightly: true };
  const bench = { events: 9, now: new Date('2026-05-02T08:00:00Z'), lastNight: new Date('2026-05-02T03:00:00Z') };

  it('is due after the night when the bench has grown', () => {
    expect(isBackupDue(plan, undefined, bench)).toBe(true);
    expect(isBackupDue(plan, { madeAt: '2026-05-01T20:00:00Z', events: 8 }, bench)).toBe(true);
  });

  it('is not due twice a night, without anything new, on an empty bench, or when it is switched off', () => {
    expect(isBackupDue(plan, { madeAt: '2026-05-02T03:10:00Z', events: 8 }, bench)).toBe(false);
    expect(isBackupDue(plan, { madeAt: '2026-05-01T20:00:00Z', events: 9 }, bench)).toBe(false);
    expect(isBackupDue(plan, undefined, { ...bench, events: 0 })).toBe(false);
    expect(isBackupDue({ ...plan, nightly: false }, undefined, bench)).toBe(false);
  });

  it('is due when the newest one comes from a time that the clock has not reached', () => {
    expect(isBackupDue(plan, { madeAt: '2031-01-01T00:00:00Z', events: 8 }, bench)).toBe(true);
  });
});

describe('making, trying and bringing back', () => {
  let bench: Bench;
  let shelf: ReturnType<typeof memoryBackups>;
  let minute = 0;
  const clock: Clock = {
    now: () => new Date(Date.UTC(2026, 4, 1, 9, (minute += 1))),
    newId: () => `019f0000-0000-7000-8000-${String((minute += 1)).padStart(12, '0')}`,
  };
  const photo = { hash: 'a'.repeat(64), mediaType: 'image/png', widthPx: 1, heightPx: 1, bytes: 1, takenAt: null };
  let put: string[];
  const photos: PhotoStore = {
    put: async (name) => {
      put.push(name);
      return { ok: true, photo, duplicate: false };
    },
    get: async () => null,
    list: async () => [photo],
    close: async () => undefined,
  };
  const freshBench = (): Bench => openBench({ store: memoryStore(), models: smallModels(), clock, device: 'bench-1', version: '1' });
  const make = () => makeBackup({ bench, photos, shelf, clock, version: '1' });
  beforeEach(() => {
    put = [];
    bench = freshBench();
    shelf = memoryBackups();
    const recorded = bench.record(oneLamp.map(([kind, body]) => ({ kind, body })));
    expect(recorded).toMatchObject({ ok: true });
  });

  it('proves that the backup folds to the same bench, and brings it back into an empty one with its photos', async () => {
    const made = await make();
    expect(made).toMatchObject({ ok: true, tried: { events: oneLamp.length, photos: 1 }, removed: [] });
    const fresh = freshBench();
    const name = [...shelf.kept.keys()][0]!;
    expect(await restoreBackup(fresh, photos, shelf, name)).toEqual({ ok: true, events: oneLamp.length, photos: 1 });
    expect(put).toEqual([photo.hash]);
    expect(await tryBackup(shelf, fresh, name)).toMatchObject({ ok: true, digest: (made as { tried: { digest: string } }).tried.digest });
  });

  it('is not brought back into a bench that holds something', async () => {
    await make();
    expect(await restoreBackup(bench, photos, shelf, [...shelf.kept.keys()][0]!)).toMatchObject({ ok: false, code: 'not-empty' });
    expect(put).toEqual([]);
  });

  it('says when a backup is another bench, and then removes no older one', async () => {
    for (let i = 0; i < 5; i++) await make();
    expect(shelf.kept.size).toBe(3);
    const write = shelf.write;
    shelf.write = (events, ...rest) => write(events.slice(0, -1), ...rest);
    expect(await make()).toMatchObject({ ok: false, code: 'backup-differs' });
    expect(shelf.kept.size).toBe(4);
  });
});
