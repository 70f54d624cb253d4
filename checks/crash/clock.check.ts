import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { makeBackup } from '../../src/bench/backup/index.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import type { Clock } from '../../src/bench/ports.ts';
import { openBackupShelf } from '../../src/edges/bundle/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openHome } from '../../src/edges/home.ts';
import { loadModels } from '../../src/edges/models/index.ts';
import { openPhotoStore } from '../../src/edges/photos/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';

it('a clock that is set back by a year loses and reorders nothing, also after a restart and in a backup', async () => {
  const dir = mkdtempSync(join(tmpdir(), 'salvor-clock-'));
  const home = openHome(dir);
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  let now = new Date('2026-05-01T09:00:00Z');
  const clock: Clock = { ...systemClock(), now: () => now };
  const photos = openPhotoStore(home.photos);
  const write = async (texts: readonly string[]): Promise<{ texts: unknown[]; backup: { ok: boolean } }> => {
    const store = openSqliteStore(home.database);
    const bench = openBench({ store, models, clock, device: home.device, version: '0.0.0' });
    for (const text of texts) expect(bench.record([{ kind: 'note-written', body: { text } }])).toMatchObject({ ok: true });
    const backup = await makeBackup({ bench, photos, shelf: openBackupShelf(dir), clock, version: '0.0.0' });
    const all = bench.log(0, 100).map(({ event }) => (event.body as { text: string }).text);
    store.close();
    return { texts: all, backup };
  };
  expect(await write(['first', 'second'])).toMatchObject({ texts: ['first', 'second'], backup: { ok: true } });
  now = new Date('2025-05-01T09:00:00Z');
  expect(await write(['third', 'fourth'])).toMatchObject({ texts: ['first', 'second', 'third', 'fourth'], backup: { ok: true } });
  await photos.close();
  rmSync(dir, { recursive: true, force: true });
});
