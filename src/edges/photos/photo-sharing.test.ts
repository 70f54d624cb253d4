import { spawnSync } from 'node:child_process';
import { existsSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp, { type Exif } from 'sharp';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { PhotoStore } from '../../bench/ports.ts';
import { openPhotoStore } from './index.ts';

let dir: string;
let photos: PhotoStore;
beforeEach(() => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-sharing-'));
  photos = openPhotoStore(dir);
});
afterEach(async () => {
  await photos.close();
  rmSync(dir, { recursive: true, force: true });
});

const picture = (exif: Exif = {}): Promise<Buffer> =>
  sharp({ create: { width: 90, height: 60, channels: 3, background: '#334455' } })
    .withExif(exif)
    .jpeg()
    .toBuffer();

describe('a photo that is sent twice at once', () => {
  it('is kept once, and one of the two is told that it was there already', async () => {
    const bytes = await picture();
    const results = await Promise.all([photos.put('a.jpg', bytes), photos.put('b.jpg', bytes)]);
    expect(results.map((result) => result.ok && result.duplicate).sort()).toEqual([false, true]);
    expect(await photos.list()).toHaveLength(1);
  });

  it('is refused under each of its names', async () => {
    const broken = (await picture()).subarray(0, 400);
    const results = await Promise.all([photos.put('a.jpg', broken), photos.put('b.jpg', broken)]);
    expect(results).toMatchObject([
      { code: 'photo-corrupt', name: 'a.jpg' },
      { code: 'photo-corrupt', name: 'b.jpg' },
    ]);
  });
});

describe('what is half written when a second process opens the folder', () => {
  const beingWrittenBy = (pid: number): string => {
    mkdirSync(join(dir, 'ab'), { recursive: true });
    const file = join(dir, 'ab', `abcd.jpg.${pid}-0a1b2c3d.part`);
    writeFileSync(file, 'half');
    return file;
  };

  it('stays while the process that writes it lives, and goes when that is no more', async () => {
    const { pid: gone } = spawnSync(process.execPath, ['--version']);
    const [living, dead] = [beingWrittenBy(process.pid), beingWrittenBy(gone)];
    const second = openPhotoStore(dir);
    await second.close();
    expect([existsSync(living), existsSync(dead)]).toEqual([true, false]);
  });
});

describe('the time at which a photo was taken', () => {
  const takenAt = async (tags: Record<string, string>): Promise<string | null> => {
    const put = await photos.put('a.jpg', await picture({ IFD2: tags }));
    if (!put.ok) throw new Error(put.code);
    return put.photo.takenAt;
  };

  it('is that of the camera, whatever the time zone of this machine', async () => {
    const zone = process.env['TZ'];
    try {
      process.env['TZ'] = 'Pacific/Auckland';
      expect(await takenAt({ DateTimeOriginal: '2026:05:01 09:30:00' })).toBe('2026-05-01T09:30:00');
      expect(await takenAt({ DateTimeOriginal: '2026:05:01 09:30:00', OffsetTimeOriginal: '+01:00' })).toBe('2026-05-01T09:30:00+01:00');
    } finally {
      if (zone === undefined) delete process.env['TZ'];
      else process.env['TZ'] = zone;
    }
  });

  it.each(['0000:00:00 00:00:00', '2026:02:31 09:30:00', 'yesterday'])('is none where the camera says %s', async (text) => {
    expect(await takenAt({ DateTimeOriginal: text })).toBeNull();
  });
});
