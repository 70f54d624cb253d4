import { mkdtempSync, readdirSync, rmSync, writeFileSync, mkdirSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PhotoStore } from '../../bench/ports.ts';
import { bucketIn, openPhotoStore } from './index.ts';
import { photoStoreContract } from './photo-store.contract.ts';

let dir: string;
let photos: PhotoStore;

beforeAll(() => {
  dir = mkdtempSync(join(tmpdir(), 'salvor-photos-'));
  photos = openPhotoStore(dir);
});
afterAll(async () => {
  await photos.close();
  rmSync(dir, { recursive: true, force: true });
});

/** Red left of blue, wider than high: which way is up can be told from a corner. */
const twoColours = (width = 120, height = 80) =>
  sharp({ create: { width, height, channels: 3, background: '#0000ff' } }).composite([
    { input: { create: { width: width / 2, height, channels: 3, background: '#ff0000' } }, left: 0, top: 0 },
  ]);

const codeOf = async (name: string, bytes: Uint8Array): Promise<string> => {
  const result = await photos.put(name, bytes);
  return result.ok ? 'taken' : result.code;
};

async function view(bytes: Uint8Array, name = 'board.jpg'): Promise<{ width: number; height: number; left: number[]; data: Buffer }> {
  const put = await photos.put(name, bytes);
  if (!put.ok) throw new Error(put.code);
  const got = await photos.get(put.photo.hash, 'view');
  const { data, info } = await sharp(got!.bytes).raw().toBuffer({ resolveWithObject: true });
  const at = (Math.floor(info.height / 2) * info.width + 10) * info.channels;
  return { width: info.width, height: info.height, left: [...data.subarray(at, at + 3)], data };
}

describe('a folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'salvor-photos-'));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  photoStoreContract('a folder', () => openPhotoStore(folder));
});

describe('the address of a bucket', () => {
  it('names the bucket and what its objects begin with', () => {
    expect(bucketIn('s3://workshop')).toEqual({ name: 'workshop', prefix: '' });
    expect(bucketIn('s3://workshop/two/benches/')).toEqual({ name: 'workshop', prefix: 'two/benches/' });
  });

  it.each(['workshop', 's3://', 's3://UPPER', 's3://a b', 'https://workshop'])('is not %s', (text) => {
    expect(bucketIn(text)).toBeNull();
  });
});

describe('a photo that is taken', () => {
  it('is kept as it came, with a view and a thumbnail no wider than they should be', async () => {
    const bytes = await twoColours(4000, 3000).jpeg().toBuffer();
    const put = await photos.put('board.jpg', bytes);
    expect(put).toMatchObject({
      ok: true,
      duplicate: false,
      photo: { mediaType: 'image/jpeg', widthPx: 4000, heightPx: 3000, bytes: bytes.length },
    });
    const { hash } = (put as Extract<typeof put, { ok: true }>).photo;
    expect(Buffer.compare(Buffer.from((await photos.get(hash, 'original'))!.bytes), bytes)).toBe(0);
    expect(await sharp((await photos.get(hash, 'view'))!.bytes).metadata()).toMatchObject({ width: 2048, height: 1536, format: 'jpeg' });
    expect(await sharp((await photos.get(hash, 'thumb'))!.bytes).metadata()).toMatchObject({ width: 320, height: 240 });
  });

  it('is one photo however often it is sent', async () => {
    const bytes = await twoColours(50, 50).png().toBuffer();
    expect(await photos.put('a.png', bytes)).toMatchObject({ duplicate: false });
    expect(await photos.put('b.png', bytes)).toMatchObject({ ok: true, duplicate: true });
    expect((await photos.list()).filter(({ bytes: size }) => size === bytes.length)).toHaveLength(1);
  });

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('stands upright whatever the camera wrote (orientation %i)', async (orientation) => {
    const lies = orientation >= 5;
    const upright = await twoColours().removeAlpha().raw().toBuffer();
    const raw = { raw: { width: 120, height: 80, channels: 3 as const } };
    const turned = UNDO[orientation]!(sharp(upright, raw));
    const pixels = await turned.raw().toBuffer({ resolveWithObject: true });
    const bytes = await sharp(pixels.data, { raw: { ...pixels.info, channels: 3 } })
      .withMetadata({ orientation })
      .jpeg({ quality: 100 })
      .toBuffer();
    expect(await sharp(bytes).metadata()).toMatchObject(lies ? { width: 80, height: 120 } : { width: 120, height: 80 });
    const seen = await view(bytes);
    expect([seen.width, seen.height]).toEqual([120, 80]);
    expect(seen.left[0]).toBeGreaterThan(200);
    expect(seen.left[2]).toBeLessThan(60);
  });

  it('shows nothing of where it was taken, and says when', async () => {
    const exif = {
      IFD0: { Model: 'a camera' },
      IFD2: { DateTimeOriginal: '2026:05:01 09:30:00' },
      IFD3: { GPSLatitudeRef: 'N', GPSLatitude: '51/1 30/1 0/1' },
    };
    const put = await photos.put('where.jpg', await twoColours(60, 60).withExif(exif).jpeg().toBuffer());
    if (!put.ok) throw new Error(put.code);
    expect(put.photo.takenAt).toMatch(/^2026-05-01T/);
    for (const size of ['view', 'thumb'] as const) {
      const { exif: left } = await sharp((await photos.get(put.photo.hash, size))!.bytes).metadata();
      expect(left).toBeUndefined();
    }
  });

  it.each([
    ['a WebP', 'x.webp', () => twoColours().webp().toBuffer()],
    ['a CMYK JPEG', 'x.jpeg', () => twoColours().toColourspace('cmyk').jpeg().toBuffer()],
    [
      'a PNG with holes',
      'x.png',
      () =>
        sharp({ create: { width: 9, height: 9, channels: 4, background: '#0000' } })
          .png()
          .toBuffer(),
    ],
    ['a name without an ending', 'photo', () => twoColours(34, 34).jpeg().toBuffer()],
  ])('may be %s', async (_, name, make) => {
    expect(await codeOf(name, await make())).toBe('taken');
  });

  it('may move: its first picture is shown', async () => {
    const frames = await Promise.all(
      ['#ff0000', '#00ff00'].map((background) =>
        sharp({ create: { width: 40, height: 30, channels: 3, background } })
          .png()
          .toBuffer(),
      ),
    );
    const moving = await sharp(frames, { join: { animated: true } })
      .webp()
      .toBuffer();
    const seen = await view(moving, 'moving.webp');
    expect([seen.width, seen.height]).toEqual([40, 30]);
  });
});

describe('a file that is refused', () => {
  it.each([
    ['photo-empty', 'a.jpg', () => new Uint8Array()],
    ['photo-not-a-picture', 'a.jpg', () => new TextEncoder().encode('this is a letter')],
    ['photo-mislabelled', 'a.jpg', () => twoColours().png().toBuffer()],
    ['photo-unsupported', 'a.heic', () => Uint8Array.from([0, 0, 0, 24, ...Buffer.from('ftypheic'), 0, 0, 0, 0])],
    ['photo-unsupported', 'a.gif', () => Buffer.from('GIF89a\x01\x00\x01\x00')],
    ['photo-too-many-pixels', 'a.png', () => pngClaiming(60_000, 60_000)],
    ['photo-corrupt', 'a.png', () => pngClaiming(100, 100)],
    ['photo-corrupt', 'a.jpg', async () => (await twoColours(800, 600).jpeg().toBuffer()).subarray(0, 2500)],
  ])('is told why: %s for %s', async (code, name, make) => {
    expect(await codeOf(name, await make())).toBe(code);
  });

  it('is told that it is too large before anything is read', async () => {
    const bytes = new Uint8Array(41e6);
    bytes.set([0xff, 0xd8, 0xff]);
    expect(await codeOf('a.jpg', bytes)).toBe('photo-too-large');
  });

  it('leaves nothing behind', async () => {
    const before = readdirSync(dir, { recursive: true }).length;
    await codeOf('a.jpg', (await twoColours(700, 500).jpeg().toBuffer()).subarray(0, 2000));
    expect(readdirSync(dir, { recursive: true })).toHaveLength(before);
  });
});

describe('the folder of photos', () => {
  it('is there again after a restart, and what was half written is swept away', async () => {
    const other = mkdtempSync(join(tmpdir(), 'salvor-photos-'));
    mkdirSync(join(other, 'ab'));
    writeFileSync(join(other, 'ab', 'abcd.jpg.1234.part'), 'half');
    const first = openPhotoStore(other);
    const put = await first.put('a.jpg', await twoColours().jpeg().toBuffer());
    await first.close();
    const again = openPhotoStore(other);
    expect(await again.list()).toEqual([put.ok && put.photo]);
    await again.close();
    expect(readdirSync(join(other, 'ab')).filter((name) => name.endsWith('.part'))).toEqual([]);
    rmSync(other, { recursive: true });
  });

  it('answers null for a photo that it does not have, whatever it is called', async () => {
    expect(await photos.get('0'.repeat(64), 'view')).toBeNull();
    expect(await photos.get('../../etc/passwd', 'original')).toBeNull();
  });
});

/** What a camera held in each way would have stored, so that its orientation tag (EXIF 2.3, tag 0x0112) sets it upright. */
const UNDO: Readonly<Record<number, (picture: Sharp) => Sharp>> = {
  1: (p) => p,
  2: (p) => p.flop(),
  3: (p) => p.rotate(180),
  4: (p) => p.flip(),
  5: (p) => p.flop().rotate(270),
  6: (p) => p.rotate(270),
  7: (p) => p.flop().rotate(90),
  8: (p) => p.rotate(90),
};

/** A PNG whose header claims a size, with hardly anything after it. */
function pngClaiming(width: number, height: number): Uint8Array {
  const header = Buffer.alloc(33);
  header.write('\x89PNG\r\n\x1a\n', 0, 'latin1');
  header.writeUInt32BE(13, 8);
  header.write('IHDR', 12, 'latin1');
  header.writeUInt32BE(width, 16);
  header.writeUInt32BE(height, 20);
  header.set([8, 2, 0, 0, 0], 24);
  header.writeUInt32BE(crc32(header.subarray(12, 29)), 29);
  return header;
}

function crc32(bytes: Uint8Array): number {
  let crc = -1;
  for (const byte of bytes) {
    crc ^= byte;
    for (let bit = 0; bit < 8; bit++) crc = (crc >>> 1) ^ (crc & 1 ? 0xedb88320 : 0);
  }
  return (crc ^ -1) >>> 0;
}
