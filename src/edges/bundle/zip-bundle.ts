import { Unzip, UnzipInflate, zip, type AsyncZippable } from 'fflate';
import type { AnyEvent } from '../../bench/events/index.ts';
import type { PhotoStore } from '../../bench/ports.ts';
import { bundleContents, bundleFiles, isBundleFile, refuse, type BundleResult } from './bundle.ts';

/** Bounds while a zip is unpacked, in bytes really unpacked, whatever its headers say. */
const MAX_UNPACKED = 4e9;
const MAX_ENTRIES = 100_000;

const ENDINGS: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' };

/** The whole bench as one zip: every event in order, every photo as it was sent. The same bench gives the same bytes. */
export async function writeBundle(events: readonly AnyEvent[], photos: PhotoStore): Promise<Uint8Array> {
  const kept = await photos.list();
  const originals = await Promise.all(kept.map(async ({ hash }) => ({ hash, got: await photos.get(hash, 'original') })));
  const named = originals.flatMap(({ hash, got }) => (got ? [{ name: `${hash}.${ENDINGS[got.mediaType]}`, bytes: got.bytes }] : []));
  const entries: AsyncZippable = {};
  for (const [name, bytes] of bundleFiles(events, named))
    entries[name] = [bytes, { level: name.startsWith('photos/') ? 0 : 6, mtime: '1980-01-01' }];
  return new Promise((resolve, reject) => zip(entries, (error, bytes) => (error ? reject(error) : resolve(bytes))));
}

/** What a bundle holds, or why it cannot be taken. Files that do not belong into one are not even unpacked. */
export async function readBundle(bytes: Uint8Array): Promise<BundleResult> {
  if (bytes[0] !== 0x50 || bytes[1] !== 0x4b) return refuse('bundle-not-a-zip', 'its first bytes are not those of a zip file');
  try {
    return unpack(bytes);
  } catch (error) {
    return refuse('bundle-damaged', `it cannot be unpacked (${error instanceof Error ? error.message : String(error)})`);
  }
}

class TooLarge extends Error {}

function unpack(bytes: Uint8Array): BundleResult {
  const parts = new Map<string, Uint8Array[]>();
  let unpacked = 0;
  let entries = 0;
  const unzip = new Unzip((file) => {
    if (++entries > MAX_ENTRIES) throw new TooLarge(`it holds more than ${MAX_ENTRIES} files`);
    if (!isBundleFile(file.name) || parts.has(file.name)) return;
    const chunks: Uint8Array[] = [];
    parts.set(file.name, chunks);
    file.ondata = (error, chunk) => {
      if (error) throw error;
      unpacked += chunk.length;
      if (unpacked > MAX_UNPACKED) throw new TooLarge(`it unpacks to more than ${MAX_UNPACKED / 1e9} GB`);
      chunks.push(chunk);
    };
    file.start();
  });
  unzip.register(UnzipInflate);
  try {
    for (let at = 0; at < bytes.length; at += CHUNK) unzip.push(bytes.subarray(at, at + CHUNK), at + CHUNK >= bytes.length);
  } catch (error) {
    if (error instanceof TooLarge) return refuse('bundle-too-large', error.message);
    throw error;
  }
  return bundleContents(new Map([...parts].map(([name, chunks]) => [name, joined(chunks)])));
}

const CHUNK = 1 << 16;

function joined(chunks: readonly Uint8Array[]): Uint8Array {
  if (chunks.length === 1) return chunks[0]!;
  const all = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let at = 0;
  for (const chunk of chunks) {
    all.set(chunk, at);
    at += chunk.length;
  }
  return all;
}
