import { strToU8, zipSync, type Zippable } from 'fflate';
import { sha256 } from '../../src/edges/bundle/bundle.ts';
import type { Hostile } from './hostile-photos.ts';

const EVENT = { id: '019f0000-0000-7000-8000-000000000001', at: '2026-05-01T09:00:00Z', device: 'desk', version: 1 };
const note = (body: unknown = { text: 'a note' }, more: object = {}): string =>
  JSON.stringify({ ...EVENT, kind: 'note-written', body, ...more });

/** A bundle that is right in all that is not given. */
function bundleOf(parts: { lines?: string; manifest?: object; files?: Zippable }): Uint8Array {
  const lines = strToU8(parts.lines ?? `${note()}\n`);
  const events = (parts.lines ?? ' ').split('\n').filter(Boolean).length;
  const manifest = { format: 'salvor-bench', version: 1, events, photos: 0, events_sha256: sha256(lines), ...parts.manifest };
  return zipSync({ 'manifest.json': strToU8(JSON.stringify(manifest)), 'events.jsonl': lines, ...parts.files });
}

const nested = (depth: number): string => '['.repeat(depth) + ']'.repeat(depth);

/** The same file with another size written where the list of files says what it unpacks to (central directory, APPNOTE 4.3.12). */
function lyingAboutSize(zip: Uint8Array, said: number): Uint8Array {
  const copy = Buffer.from(zip);
  for (let at = copy.indexOf('PK\x01\x02', 0, 'latin1'); at >= 0; at = copy.indexOf('PK\x01\x02', at + 4, 'latin1'))
    copy.writeUInt32LE(said, at + 24);
  return copy;
}

/** Bundles that are none, that lie, that unpack to far more than they are, or that nest without end. */
export function hostileBundles(): Hostile[] {
  const good = bundleOf({});
  const zeros = new Uint8Array(300_000_000);
  const bomb = bundleOf({ files: { 'events.jsonl': [zeros, { level: 9 }] } });
  const entries: readonly (readonly [name: string, bytes: Uint8Array])[] = [
    ['empty', new Uint8Array()],
    ['text', strToU8('no bundle')],
    ['cut off', good.subarray(0, good.length - 30)],
    ['only a head', strToU8('PK\x03\x04')],
    ['end record alone', Buffer.concat([Buffer.from('PK\x05\x06'), Buffer.alloc(18)])],
    ['a zip in a zip', zipSync({ 'bench.zip': good })],
    ['no manifest', zipSync({ 'events.jsonl': strToU8(`${note()}\n`) })],
    ['no log', bundleOf({ files: { 'events.jsonl': new Uint8Array() }, manifest: { events: 1 } })],
    ['of a later version', bundleOf({ manifest: { version: 99 } })],
    ['of another program', bundleOf({ manifest: { format: 'other' } })],
    ['fewer events than it says', bundleOf({ manifest: { events: 2 } })],
    ['another log than it says', bundleOf({ manifest: { events_sha256: '0'.repeat(64) } })],
    ['three hundred megabytes of zeros', bomb],
    ['the same, saying it is small', lyingAboutSize(bomb, 1000)],
    ['a size of four gigabytes', lyingAboutSize(good, 0xfffffffe)],
    [
      'paths that lead elsewhere',
      bundleOf({ files: { '../../device': strToU8('x'), 'photos/../../x.jpg': strToU8('x') }, manifest: { photos: 1 } }),
    ],
    ['a photo that is none', bundleOf({ files: { 'photos/x.jpg': strToU8('text') }, manifest: { photos: 1 } })],
    ['a photo of another hash', bundleOf({ files: { [`photos/${'0'.repeat(64)}.jpg`]: strToU8('text') }, manifest: { photos: 1 } })],
    ['an event of no kind', bundleOf({ lines: `${note(undefined, { kind: 'made-up' })}\n` })],
    ['an event that is nested without end', bundleOf({ lines: `{"id":"${EVENT.id}","body":${nested(200_000)}}\n` })],
    [
      'a newer event that is nested without end',
      bundleOf({ lines: note(0, { version: 9 }).replace('"body":0', `"body":${nested(100_000)}`) + '\n' }),
    ],
    ['a line that is no JSON', bundleOf({ lines: `${note()}\n{"id":\n` })],
    ['a log that is no text', bundleOf({ lines: `${note()}\n`, files: { 'events.jsonl': new Uint8Array([0xff, 0xfe, 0x00, 0xd8]) } })],
    ['a price of no size', bundleOf({ lines: `${note({ text: null })}\n`.replace('null', '1e400') })],
  ];
  return entries.map(([name, bytes]) => ({ name, bytes }));
}
