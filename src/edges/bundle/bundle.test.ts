import { createHash } from 'node:crypto';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, zipSync, type Zippable } from 'fflate';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { PhotoStore } from '../../bench/ports.ts';
import { readBundle, readFolder, writeBundle } from './index.ts';

const note = (n: number): AnyEvent => ({
  id: `019f0000-0000-7000-8000-${String(n).padStart(12, '0')}`,
  at: '2026-05-01T09:00:00Z',
  device: 'desk',
  version: 1,
  kind: 'note-written',
  body: { text: `note ${n}` },
});
const foreign: AnyEvent = { ...note(9), version: 99, kind: 'moon-phase', body: { z: [1, null], a: 'ü' }, foreign: true };

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');
const picture = strToU8('bytes of a picture, with PK\x03\x04 and PK\x07\x08 in them');
const photoName = `photos/${sha256(picture)}.jpg`;
const photosHolding = (...pictures: readonly Uint8Array[]): PhotoStore => ({
  put: () => Promise.reject(new Error('not here')),
  list: () =>
    Promise.resolve(
      pictures.map((bytes) => ({
        hash: sha256(bytes),
        mediaType: 'image/jpeg',
        widthPx: 1,
        heightPx: 1,
        bytes: bytes.length,
        takenAt: null,
      })),
    ),
  get: (hash) => {
    const bytes = pictures.find((one) => sha256(one) === hash);
    return Promise.resolve(bytes ? { bytes, mediaType: 'image/jpeg' } : null);
  },
  close: () => Promise.resolve(),
});

const linesOf = (...events: readonly unknown[]): string => events.map((event) => `${JSON.stringify(event)}\n`).join('');

/** A bundle made by hand: right in all that is not given. */
function zipOf(parts: { lines?: string | Uint8Array; manifest?: object; more?: Zippable }): Uint8Array {
  const given = parts.lines ?? linesOf(note(1));
  const lines = typeof given === 'string' ? strToU8(given) : given;
  const right = { format: 'salvor-bench', version: 1, events: 1, photos: 0, events_sha256: sha256(lines) };
  const manifest = strToU8(JSON.stringify({ ...right, ...parts.manifest }));
  return zipSync({ 'manifest.json': manifest, 'events.jsonl': lines, ...parts.more });
}

describe('a bundle', () => {
  it('gives back every event in order, foreign ones among them, and every photo', async () => {
    const events = [note(2), foreign, note(1)];
    const read = await readBundle(await writeBundle(events, photosHolding(picture)));
    expect(read).toEqual({ ok: true, events, photos: [{ name: `${sha256(picture)}.jpg`, bytes: Buffer.from(picture) }] });
  });

  it('of an empty bench is a bundle too', async () => {
    expect(await readBundle(await writeBundle([], photosHolding()))).toEqual({ ok: true, events: [], photos: [] });
  });

  it('of the same bench has the same bytes, whatever the time zone', async () => {
    const zone = process.env['TZ'];
    const hashes: string[] = [];
    try {
      for (const name of ['Pacific/Honolulu', 'UTC', 'Pacific/Auckland']) {
        process.env['TZ'] = name;
        hashes.push(sha256(await writeBundle([note(1)], photosHolding(picture))));
      }
    } finally {
      if (zone === undefined) delete process.env['TZ'];
      else process.env['TZ'] = zone;
    }
    expect(new Set(hashes).size).toBe(1);
  });

  it('ends with an event as well as with a line break', async () => {
    expect(await readBundle(zipOf({ lines: JSON.stringify(note(1)) }))).toMatchObject({ ok: true, events: [note(1)] });
  });

  it('may hold files that do not belong into it; they are left alone', async () => {
    const more = { 'read me.txt': strToU8('hello'), 'photos/notes.txt': strToU8('x'), 'photos/': new Uint8Array() };
    expect(await readBundle(zipOf({ more }))).toMatchObject({ ok: true, photos: [] });
  });

  it('may be packed by a program that writes the sizes after the bytes', async () => {
    const plain = zipOf({ more: { [photoName]: [picture, { level: 0 }] }, manifest: { photos: 1 } });
    expect(await readBundle(withoutLocalSizes(plain))).toMatchObject({ ok: true, photos: [{ name: photoName.slice('photos/'.length) }] });
  });
});

/** Sets bit 3 of the flags in every local header and takes the sizes and the checksum out of it (APPNOTE.TXT 6.3.10, §4.3.7 and §4.4.4). */
function withoutLocalSizes(zip: Uint8Array): Uint8Array {
  const bytes = Buffer.from(zip);
  for (let at = bytes.indexOf('PK\x01\x02', 0, 'latin1'); at >= 0; at = bytes.indexOf('PK\x01\x02', at + 4, 'latin1')) {
    const local = bytes.readUInt32LE(at + 42);
    if (bytes.readUInt32LE(local) !== 0x04034b50) continue;
    bytes.writeUInt16LE(bytes.readUInt16LE(local + 6) | 8, local + 6);
    bytes.fill(0, local + 14, local + 26);
  }
  return bytes;
}

describe('a bundle that is refused', () => {
  const refusals: readonly (readonly [what: string, code: string, place: object, make: () => Uint8Array])[] = [
    ['is no zip', 'bundle-not-a-zip', {}, () => strToU8('a letter')],
    ['is empty', 'bundle-not-a-zip', {}, () => new Uint8Array()],
    ['is cut off', 'bundle-damaged', {}, () => zipOf({}).subarray(0, 200)],
    ['has no manifest', 'bundle-incomplete', { file: 'manifest.json' }, () => zipSync({ 'events.jsonl': strToU8(linesOf(note(1))) })],
    [
      'has no events',
      'bundle-incomplete',
      { file: 'events.jsonl' },
      () => zipSync({ 'manifest.json': strToU8('{"format":"salvor-bench","version":1}') }),
    ],
    ['is of another format', 'bundle-not-ours', { file: 'manifest.json' }, () => zipOf({ manifest: { format: 'shopping' } })],
    ['has a manifest that is no JSON', 'bundle-not-ours', {}, () => zipOf({ more: { 'manifest.json': strToU8('{') } })],
    ['has a version that is none', 'bundle-not-ours', {}, () => zipOf({ manifest: { version: '1' } })],
    [
      'is of a later version, even with parts unknown here',
      'bundle-newer',
      {},
      () => zipSync({ 'manifest.json': strToU8('{"format":"salvor-bench","version":3}'), 'log.bin': strToU8('?') }),
    ],
    [
      'was changed after it was written',
      'bundle-damaged',
      { file: 'events.jsonl' },
      () => zipOf({ manifest: { events_sha256: '0'.repeat(64) } }),
    ],
    ['lacks an event', 'bundle-incomplete', {}, () => zipOf({ manifest: { events: 2 } })],
    ['lacks a photo', 'bundle-incomplete', {}, () => zipOf({ manifest: { photos: 1 } })],
    [
      'has a photo that is another one',
      'bundle-damaged',
      { file: photoName },
      () => zipOf({ manifest: { photos: 1 }, more: { [photoName]: strToU8('another') } }),
    ],
    ['has a line that is no JSON', 'bundle-bad-event', { line: 2 }, () => zipOf({ lines: `${linesOf(note(1))}{"id":\n` })],
    [
      'has an empty line in the middle',
      'bundle-bad-event',
      { line: 2 },
      () => zipOf({ lines: `${linesOf(note(1))}\n${linesOf(note(2))}` }),
    ],
    [
      'has an event with a faulty field',
      'bundle-bad-event',
      { line: 3, field: 'body.text' },
      () => zipOf({ lines: linesOf(note(1), note(2), { ...note(3), body: { text: 7 } }) }),
    ],
    [
      'has text that is not UTF-8',
      'bundle-damaged',
      { file: 'events.jsonl' },
      () => zipOf({ lines: Uint8Array.from([...strToU8(linesOf(note(1))), 0xff]) }),
    ],
    ['leads to a file outside', 'bundle-damaged', {}, () => zipOf({ more: { '../../photos/x.jpg': picture } })],
    ['leads to an absolute path', 'bundle-damaged', {}, () => zipOf({ more: { '/photos/x.jpg': picture } })],
  ];

  it.each(refusals)('%s: %s', async (_what, code, place, make) => {
    const read = await readBundle(make());
    expect(read).toMatchObject({ ok: false, code, ...place });
    expect((read as { detail: string }).detail).not.toBe('');
  });

  it('says the line and the field in its clause', async () => {
    const read = await readBundle(zipOf({ lines: linesOf(note(1), { ...note(2), at: 'yesterday' }) }));
    expect(read).toMatchObject({ detail: expect.stringMatching(/^events\.jsonl, line 2: at must be a UTC time/) as string });
  });

  it('cannot pass itself off as read by what its manifest says', async () => {
    const read = await readBundle(
      zipOf({ lines: linesOf({ nonsense: 1 }), manifest: { ok: true, events: [{ nonsense: 1 }], photos: [] } }),
    );
    expect(read).toMatchObject({ ok: false, code: 'bundle-bad-event', line: 1 });
  });
});

describe('a bundle that is made to hurt', () => {
  const zeros = (bytes: number): Zippable[string] => [new Uint8Array(bytes), { level: 9 }];

  it('is refused by the size of a photo before it is unpacked', async () => {
    expect(await readBundle(zipOf({ more: { 'photos/a.png': zeros(41e6) } }))).toMatchObject({
      code: 'bundle-too-large',
      file: 'photos/a.png',
    });
  });

  it('is refused by what all its photos would unpack to', async () => {
    const bomb = zipOf({ more: Object.fromEntries(Array.from({ length: 8 }, (_, n) => [`photos/${n}.png`, zeros(39e6)])) });
    expect(bomb.length).toBeLessThan(1e6);
    expect(await readBundle(bomb)).toMatchObject({ code: 'bundle-too-large' });
  });

  it('is refused when more comes out than its list of files says', async () => {
    expect(await readBundle(claimingSize(zipOf({ more: { 'photos/a.png': zeros(30e6) } }), 'photos/a.png', 100))).toMatchObject({
      code: 'bundle-damaged',
    });
  });

  it('is refused when it holds a file twice', async () => {
    const twice = Buffer.from(zipOf({ more: { 'photos/a.png': picture, 'photos/b.png': picture }, manifest: { photos: 1 } }));
    for (let at = twice.indexOf('photos/b'); at >= 0; at = twice.indexOf('photos/b')) twice.write('photos/a', at);
    expect(await readBundle(twice)).toMatchObject({ code: 'bundle-damaged', file: 'photos/a.png' });
  });

  /** Writes another unpacked size into the central directory (APPNOTE.TXT 6.3.10, §4.3.12). */
  function claimingSize(zip: Uint8Array, name: string, size: number): Uint8Array {
    const bytes = Buffer.from(zip);
    const header = bytes.lastIndexOf(name) - 46;
    expect(bytes.readUInt32LE(header)).toBe(0x02014b50);
    bytes.writeUInt32LE(size, header + 24);
    return bytes;
  }
});

describe('a bundle in a folder', () => {
  let dir: string;
  beforeEach(() => {
    dir = mkdtempSync(join(tmpdir(), 'salvor-folder-'));
    mkdirSync(join(dir, 'photos'));
    writeFileSync(join(dir, 'events.jsonl'), linesOf(note(1)));
  });
  afterEach(() => rmSync(dir, { recursive: true, force: true }));

  it('needs no manifest, and its photos may have names of their own', async () => {
    writeFileSync(join(dir, 'photos', 'front.jpg'), picture);
    writeFileSync(join(dir, 'story.yaml'), 'not a part of it');
    expect(await readFolder(dir)).toEqual({ ok: true, events: [note(1)], photos: [{ name: 'front.jpg', bytes: new Uint8Array(picture) }] });
  });

  it('is held to its manifest where there is one', async () => {
    writeFileSync(join(dir, 'manifest.json'), '{"format":"salvor-bench","version":3}');
    expect(await readFolder(dir)).toMatchObject({ ok: false, code: 'bundle-newer' });
  });

  it('is refused for a photo that is not the one of its name, and for a folder that is not there', async () => {
    writeFileSync(join(dir, photoName), 'another');
    expect(await readFolder(dir)).toMatchObject({ code: 'bundle-damaged', file: photoName });
    expect(await readFolder(join(dir, 'nowhere'))).toMatchObject({ code: 'bundle-incomplete' });
  });
});
