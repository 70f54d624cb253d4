import { buffer } from 'node:stream/consumers';
import { zip, type AsyncZippable } from 'fflate';
import { fromBufferPromise } from 'yauzl';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { PhotoStore } from '../../bench/ports.ts';
import {
  backupContents,
  bundleContents,
  bundleFiles,
  isBundleFile,
  refuse,
  sizeLimit,
  type BackupContents,
  type BundleFiles,
  type BundleRefusal,
  type BundleResult,
} from './bundle.ts';

const MAX_ENTRIES = 200_000;

/** Photos hardly shrink in a zip and the log has a bound of its own: what unpacks to more than this was made to. */
const unpackedLimit = (largest: number, zipBytes: number): number => largest + 8 * zipBytes;

/** Which files of a zip are unpacked, how large each may be, and the largest of all besides photos. */
export interface FileRule {
  readonly belongs: (name: string) => boolean;
  readonly limit: (name: string) => number;
  readonly largest: number;
}

const BENCH: FileRule = { belongs: isBundleFile, limit: sizeLimit, largest: sizeLimit('events.jsonl') };

const ENDINGS: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' };

/** The whole bench as one zip: every event in order, every photo as it was sent. The same bench gives the same bytes. */
export async function writeBundle(events: readonly AnyEvent[], photos: PhotoStore): Promise<Uint8Array> {
  const kept = await photos.list();
  const originals = await Promise.all(kept.map(async ({ hash }) => ({ hash, got: await photos.get(hash, 'original') })));
  return pack(
    bundleFiles(
      events,
      originals.flatMap(({ hash, got }) => (got ? [{ name: photoName(hash, got.mediaType), bytes: got.bytes }] : [])),
    ),
  );
}

/** Name of a photo in a bundle or beside a backup. */
export const photoName = (hash: string, mediaType: string): string => `${hash}.${ENDINGS[mediaType]}`;

/** Files as a zip, each time the same bytes. */
export function pack(files: BundleFiles): Promise<Uint8Array> {
  // Times in a zip are local ones: the same day of the calendar is the same bytes everywhere.
  const mtime = new Date(1980, 0, 1);
  const entries: AsyncZippable = {};
  for (const [name, bytes] of files) entries[name] = [bytes, { level: name.startsWith('photos/') ? 0 : 6, mtime }];
  return new Promise((resolve, reject) => zip(entries, (error, bytes) => (error ? reject(error) : resolve(bytes))));
}

/**
 * What a bundle holds, or why it cannot be taken. Files that do not belong into one are not even unpacked. Sizes are bounded by what the list
 * of files says and again while unpacking, so that a small file cannot fill the memory.
 */
export const readBundle = (bytes: Uint8Array): Promise<BundleResult> => readZip(bytes, BENCH, (files) => bundleContents(files, true));

/** As `readBundle`, of the file of a backup; its photos are not looked at. */
export const readBackup = (bytes: Uint8Array): Promise<BackupContents | BundleRefusal> => readZip(bytes, BENCH, backupContents);

/** What `contents` makes of the files of a zip that belong into it, or why it cannot be unpacked. */
export async function readZip<T>(bytes: Uint8Array, rule: FileRule, contents: (files: BundleFiles) => T): Promise<T | BundleRefusal> {
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return refuse('bundle-not-a-zip', 'its first bytes are not those of a zip file');
  try {
    const files = await unpack(bytes, rule);
    return files instanceof Map ? contents(files) : files;
  } catch (error) {
    return refuse('bundle-damaged', `it cannot be unpacked (${error instanceof Error ? error.message : String(error)})`);
  }
}

async function unpack(bytes: Uint8Array, rule: FileRule): Promise<Map<string, Uint8Array> | BundleRefusal> {
  const archive = await fromBufferPromise(Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength), { lazyEntries: true });
  if (archive.entryCount > MAX_ENTRIES)
    return refuse('bundle-too-large', `it holds ${archive.entryCount} files; up to ${MAX_ENTRIES} are taken`);
  const files = new Map<string, Uint8Array>();
  let left = unpackedLimit(rule.largest, bytes.length);
  for await (const entry of archive.eachEntry()) {
    const { fileName: file, uncompressedSize } = entry;
    if (!rule.belongs(file)) continue;
    if (files.has(file)) return refuse('bundle-damaged', `it holds ${file} twice`, { file });
    left -= uncompressedSize;
    if (uncompressedSize > rule.limit(file) || left < 0)
      return refuse('bundle-too-large', `${file} would unpack to ${uncompressedSize} bytes, which is more than is taken`, { file });
    // Fails as soon as more or fewer bytes come out than the list of files says.
    files.set(file, await buffer(await archive.openReadStreamPromise(entry)));
  }
  return files;
}
