import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { restoreBackup } from '../../src/bench/backup/index.ts';
import type { Bench } from '../../src/bench/bench.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import type { PhotoStore } from '../../src/bench/ports.ts';
import { takeBundle, type Taken } from '../../src/bench/take-bundle.ts';
import { BUNDLE_VERSION } from '../../src/edges/bundle/bundle.ts';
import { openBackupShelf, readBundle } from '../../src/edges/bundle/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openHome } from '../../src/edges/home.ts';
import { loadModels } from '../../src/edges/models/index.ts';
import { openPhotoStore } from '../../src/edges/photos/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';

const RELEASED = join(import.meta.dirname, 'released');
const PHOTO = 'cd80dcbaf3aaf6192f2fd1dd02a22fdd7f380bfac1766a27b785c28324acbf0b';
/** How many versions back must be readable. */
const KEPT = 3;

const versions = readdirSync(RELEASED).map((name) => Number(name.slice(1)));

let dir: string;
let bench: Bench;
let photos: PhotoStore;
let close: () => Promise<void>;
beforeEach(async () => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-released-'));
  const home = openHome(dir);
  const store = openSqliteStore(home.database);
  photos = openPhotoStore(home.photos);
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  bench = openBench({ store, models, clock: systemClock(), device: home.device, version: '0.0.0' });
  close = async () => {
    await photos.close();
    store.close();
  };
});
afterEach(async () => {
  await close();
  rmSync(dir, { recursive: true, force: true });
});

/** Brings in what lies in the folder of a version, as a person would: a backup by its own way, any other by import. */
async function bringIn(version: number): Promise<Taken | { readonly ok: false; readonly code: string }> {
  const folder = join(RELEASED, `v${version}`);
  const file = join(
    folder,
    readdirSync(folder).find((name) => name.endsWith('.zip'))!,
  );
  const read = await readBundle(readFileSync(file));
  if (read.ok) return takeBundle(bench, photos, read);
  return restoreBackup(bench, photos, openBackupShelf(dir), file);
}

describe('each released bundle format', () => {
  it('of the last three versions has its file here', () => {
    for (let version = Math.max(1, BUNDLE_VERSION - KEPT + 1); version <= BUNDLE_VERSION; version++) expect(versions).toContain(version);
  });

  it.each(versions)('of version %i is read into an empty bench, with all that was noted and its photo', async (version) => {
    expect(await bringIn(version)).toEqual({ ok: true, events: 5, photos: 1 });
    expect(bench.item('1')).toMatchObject({ row: { name: 'Blue Tern', status: 'on-the-bench' } });
    expect(bench.log(0, 9).map(({ event }) => event.kind)).toEqual([
      'bench-set',
      'lot-bought',
      'item-received',
      'trial-done',
      'photo-taken',
    ]);
    expect((await photos.get(PHOTO, 'view'))?.mediaType).toBe('image/jpeg');
  });
});
