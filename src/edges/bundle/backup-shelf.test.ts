import { chmodSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, unzipSync, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { BackupShelf, PhotoStore } from '../../bench/ports.ts';
import { openBackupShelf } from './backup-shelf.ts';
import { sha256 } from './bundle.ts';
import { readBundle } from './zip-bundle.ts';

const noteEvent = (n: number): AnyEvent => ({
  id: `01890000-0000-7000-8000-${String(n).padStart(12, '0')}`,
  at: '2026-05-01T09:00:00Z',
  device: 'desk',
  version: 1,
  kind: 'note-written',
  body: { text: `note ${n}` },
});

const PICTURE = Buffer.from('a picture');
const HASH = sha256(PICTURE);
const photos: PhotoStore = {
  put: () => Promise.reject(new Error('not needed')),
  get: async () => ({ bytes: PICTURE, mediaType: 'image/jpeg' }),
  list: async () => [{ hash: HASH, mediaType: 'image/jpeg', widthPx: 1, heightPx: 1, bytes: PICTURE.length, takenAt: null }],
  close: async () => undefined,
};
const BY = { at: new Date('2026-05-01T03:00:00Z'), version: '1.2.3' };
const NAME = 'salvor-2026-05-01T030000Z-2.zip';
const EVENTS = [noteEvent(1), noteEvent(2)];

let root: string;
let shelf: BackupShelf;
const chosen = (): string => join(root, 'stick');
const photoPath = (): string => join(chosen(), 'photos', HASH.slice(0, 2), `${HASH}.jpg`);
beforeEach(async () => {
  root = mkdtempSync(join(tmpdir(), 'salvor-backups-'));
  for (const name of ['bench', 'stick']) mkdirSync(join(root, name));
  shelf = openBackupShelf(join(root, 'bench'));
});
afterEach(() => rmSync(root, { recursive: true, force: true }));

describe('the folder of backups', () => {
  it('is one inside the bench, nightly, until another one is chosen', async () => {
    expect(shelf.plan()).toEqual({ folder: null, nightly: true });
    expect((await shelf.write(EVENTS, photos, BY)).ok).toBe(true);
    expect(readdirSync(join(root, 'bench/backups')).sort()).toEqual(['photos', NAME]);
    expect(await shelf.setPlan({ folder: chosen(), nightly: false })).toEqual({ ok: true });
    expect(openBackupShelf(join(root, 'bench')).plan()).toEqual({ folder: chosen(), nightly: false });
    expect(await shelf.list()).toEqual({ ok: true, backups: [] });
  });

  it('is refused when it is not there, not a whole path, a file, inside the bench, or not to be written', async () => {
    writeFileSync(join(root, 'file'), '');
    for (const folder of [join(root, 'nowhere'), 'stick', join(root, 'file'), join(root, 'bench'), join(root, 'bench/photos')])
      expect(await shelf.setPlan({ folder, nightly: true })).toMatchObject({ ok: false, code: 'backup-folder-unfit', where: folder });
    expect(shelf.plan().folder).toBeNull();
  });

  it('is said to be gone when its disk is not there, or an empty folder stands in its place', async () => {
    await shelf.setPlan({ folder: chosen(), nightly: true });
    renameSync(chosen(), join(root, 'unplugged'));
    expect(await shelf.list()).toMatchObject({ ok: false, code: 'backup-folder-gone' });
    mkdirSync(chosen());
    expect(await shelf.write(EVENTS, photos, BY)).toMatchObject({ ok: false, code: 'backup-folder-gone' });
    expect(readdirSync(chosen())).toEqual([]);
  });

  it.skipIf(process.getuid?.() === 0)('says when it can no longer be written, and leaves no half file', async () => {
    await shelf.setPlan({ folder: chosen(), nightly: true });
    chmodSync(chosen(), 0o555);
    expect(await shelf.write(EVENTS, photos, BY)).toMatchObject({ ok: false, code: 'backup-not-written' });
    chmodSync(chosen(), 0o755);
    expect(readdirSync(chosen())).toEqual(['salvor-backups.txt']);
  });
});

describe('a backup', () => {
  beforeEach(async () => {
    await shelf.setPlan({ folder: chosen(), nightly: true });
    await shelf.write(EVENTS, photos, BY);
  });

  it('is listed with its time and number of events, newest first', async () => {
    await shelf.write([...EVENTS, noteEvent(3)], photos, { ...BY, at: new Date('2026-05-02T03:00:00Z') });
    const listed = await shelf.list();
    expect(listed).toMatchObject({
      ok: true,
      backups: [
        { events: 3, madeAt: '2026-05-02T03:00:00Z' },
        { name: NAME, events: 2 },
      ],
    });
  });

  it('gives back its events and photos, by its name and from a folder elsewhere', async () => {
    renameSync(chosen(), join(root, 'elsewhere'));
    const opened = await shelf.open(join(root, 'elsewhere', NAME));
    if (!opened.ok) throw new Error(opened.detail);
    expect(opened.events).toEqual(EVENTS);
    expect(opened.photoNames).toEqual([`${HASH}.jpg`]);
    expect(await opened.photo(`${HASH}.jpg`)).toEqual({ ok: true, bytes: PICTURE });
    renameSync(join(root, 'elsewhere'), chosen());
    expect(await shelf.open(NAME)).toMatchObject({ ok: true });
  });

  it('says which photo is missing or damaged; the next backup writes it anew', async () => {
    const firstPhoto = async () => {
      const opened = await shelf.open(NAME);
      return opened.ok ? opened.photo(opened.photoNames[0]!) : opened;
    };
    writeFileSync(photoPath(), 'rot');
    expect(await firstPhoto()).toMatchObject({ ok: false, code: 'backup-unreadable', detail: expect.stringContaining(HASH) });
    rmSync(photoPath());
    expect(await firstPhoto()).toMatchObject({ ok: false, code: 'backup-unreadable' });
    await shelf.write(EVENTS, photos, BY);
    expect(await firstPhoto()).toEqual({ ok: true, bytes: PICTURE });
  });

  it('is refused whole when a byte of it is wrong, wherever', async () => {
    const path = join(chosen(), NAME);
    const right = readFileSync(path);
    let refusedOnes = 0;
    for (let at = 0; at < right.length; at += 7) {
      const wrong = Buffer.from(right);
      wrong[at]! ^= 0x55;
      writeFileSync(path, wrong);
      const opened = await shelf.open(NAME);
      if (opened.ok) expect(opened.events).toEqual(EVENTS);
      else refusedOnes++;
    }
    expect(refusedOnes).toBeGreaterThan(right.length / 14);
  });

  it('is let go of by its name, and nothing else is', async () => {
    await shelf.remove('../bench');
    await shelf.remove('salvor-backups.txt');
    await shelf.remove(NAME);
    expect(readdirSync(chosen()).sort()).toEqual(['photos', 'salvor-backups.txt']);
    expect(existsSync(photoPath())).toBe(true);
  });

  it('is no bundle that the browser could take, and says so', async () => {
    expect(await readBundle(readFileSync(join(chosen(), NAME)))).toMatchObject({ ok: false, code: 'bundle-photos-beside' });
    expect(await shelf.open(join(root, 'none.zip'))).toMatchObject({ ok: false, code: 'no-such-backup' });
  });
});

describe('a backup from a later Salvor', () => {
  const rewritten = async (change: (manifest: Record<string, unknown>, files: Record<string, Uint8Array>) => void) => {
    await shelf.write(EVENTS, photos, BY);
    const files = unzipSync(readFileSync(join(shelf.folder(), NAME)));
    const manifest = JSON.parse(Buffer.from(files['manifest.json']!).toString()) as Record<string, unknown>;
    change(manifest, files);
    writeFileSync(join(shelf.folder(), NAME), zipSync({ ...files, 'manifest.json': strToU8(JSON.stringify(manifest)) }));
    return shelf.open(NAME);
  };
  const strangeEvents = (files: Record<string, Uint8Array>, manifest: Record<string, unknown>): void => {
    const strange = { ...noteEvent(1), kind: 'moon-phase', version: 99 };
    files['events.jsonl'] = strToU8(`${JSON.stringify(strange)}\n${JSON.stringify(EVENTS[1])}\n`);
    manifest['events_sha256'] = sha256(files['events.jsonl']);
  };

  it('is refused with its version when its format is newer', async () => {
    const opened = await rewritten((manifest) => (manifest['version'] = 3));
    expect(opened).toMatchObject({ ok: false, code: 'backup-newer', detail: expect.stringContaining('version 3') });
  });

  it('is refused when it holds events that its writer knew and this one does not', async () => {
    const opened = await rewritten((manifest, files) => strangeEvents(files, manifest));
    expect(opened).toMatchObject({
      ok: false,
      code: 'backup-newer',
      detail: expect.stringMatching(/Salvor 1\.2\.3 .*moon-phase, version 99/),
    });
  });

  it('is taken when the writer did not know those events either', async () => {
    const opened = await rewritten((manifest, files) => {
      strangeEvents(files, manifest);
      manifest['not_understood'] = 1;
    });
    expect(opened).toMatchObject({ ok: true, events: [{ kind: 'moon-phase', foreign: true }, { kind: 'note-written' }] });
  });

  it('is refused when its list of photos leads elsewhere', async () => {
    const opened = await rewritten((manifest, files) => {
      files['photos.txt'] = strToU8('../../device\n');
      manifest['photos_sha256'] = sha256(files['photos.txt']);
    });
    expect(opened).toMatchObject({ ok: false, code: 'backup-unreadable' });
  });
});
