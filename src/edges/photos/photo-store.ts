import { createHash } from 'node:crypto';
import type { Piscina } from 'piscina';
import type { PhotoRefusal, PhotoSize, PhotoStore, StoredPhoto } from '../../bench/ports.ts';
import { checkPhoto, type Header } from './check-photo.ts';
import { PhotoFiles } from './photo-files.ts';
import { PhotoObjects, type Bucket } from './photo-objects.ts';
import type { PhotoShelf } from './photo-shelf.ts';

type Shrunk =
  { readonly ok: true; readonly view: Uint8Array; readonly thumb: Uint8Array } | { readonly ok: false; readonly detail: string };
type Put = Awaited<ReturnType<PhotoStore['put']>>;

/**
 * Photos in a folder, by the hash of what was sent. The original is kept as it came; view and thumbnail are made in a worker thread, upright and
 * without metadata. A photo counts as stored once its note (`<hash>.json`, written last) is on disk. The library is loaded with the first photo.
 */
export function openPhotoStore(dir: string): PhotoStore {
  return new PhotosOnShelf(new PhotoFiles(dir));
}

/** Photos as `openPhotoStore` keeps them, in a bucket of a store that speaks S3, which several servers may share. */
export function openBucketPhotoStore(bucket: Bucket, env: Readonly<Record<string, string | undefined>>): PhotoStore {
  return new PhotosOnShelf(new PhotoObjects(bucket, env));
}

class PhotosOnShelf implements PhotoStore {
  private workers: Promise<Piscina> | undefined;
  private readonly swept: Promise<void>;
  /** Photos that are being kept, by hash. */
  private readonly underway = new Map<string, Promise<Put>>();

  constructor(private readonly files: PhotoShelf) {
    this.swept = files.sweep();
  }

  async put(name: string, bytes: Uint8Array): Promise<Put> {
    await this.swept;
    const checked = await checkPhoto(name, bytes);
    if (!checked.ok) return checked;
    const hash = createHash('sha256').update(bytes).digest('hex');
    const same = await this.underway.get(hash);
    if (same) return same.ok ? { ...same, duplicate: true } : { ...same, name };
    const work = this.putNew(name, bytes, hash, checked.header).finally(() => this.underway.delete(hash));
    this.underway.set(hash, work);
    return work;
  }

  private async putNew(name: string, bytes: Uint8Array, hash: string, header: Header): Promise<Put> {
    const known = await this.note(hash);
    if (known) return { ok: true, photo: known, duplicate: true };
    const shrunk = await this.shrink(bytes);
    if (!shrunk.ok) return { ok: false, code: 'photo-corrupt', name, detail: shrunk.detail } satisfies PhotoRefusal;
    return { ok: true, photo: await this.keep(hash, header, bytes, shrunk), duplicate: false };
  }

  private async keep(
    hash: string,
    { kind, widthPx, heightPx }: Header,
    bytes: Uint8Array,
    shrunk: Extract<Shrunk, { ok: true }>,
  ): Promise<StoredPhoto> {
    const photo: StoredPhoto = { hash, mediaType: kind.mediaType, widthPx, heightPx, bytes: bytes.length, takenAt: await takenAt(bytes) };
    await this.files.write(hash, kind.ending, bytes);
    await this.files.write(hash, 'view.jpg', shrunk.view);
    await this.files.write(hash, 'thumb.jpg', shrunk.thumb);
    await this.files.write(hash, 'json', JSON.stringify(photo));
    return photo;
  }

  async get(hash: string, size: PhotoSize): Promise<{ bytes: Uint8Array; mediaType: string } | null> {
    const photo = await this.note(hash);
    if (!photo) return null;
    const mediaType = size === 'original' ? photo.mediaType : 'image/jpeg';
    const bytes = await this.files.read(hash, size === 'original' ? ENDINGS[photo.mediaType]! : `${size}.jpg`);
    return bytes && { bytes, mediaType };
  }

  async list(): Promise<readonly StoredPhoto[]> {
    const notes = await Promise.all((await this.files.hashes('json')).map((hash) => this.note(hash)));
    return notes.filter((note) => note !== null);
  }

  async close(): Promise<void> {
    await this.swept;
    await (await this.workers)?.destroy();
    await this.files.close();
  }

  private async note(hash: string): Promise<StoredPhoto | null> {
    if (!/^[0-9a-f]{64}$/.test(hash)) return null;
    const bytes = await this.files.read(hash, 'json');
    return bytes && (JSON.parse(new TextDecoder().decode(bytes)) as StoredPhoto);
  }

  private async shrink(bytes: Uint8Array): Promise<Shrunk> {
    this.workers ??= startWorkers();
    return (await this.workers).run(bytes) as Promise<Shrunk>;
  }
}

const ENDINGS: Readonly<Record<string, string>> = { 'image/jpeg': 'jpg', 'image/png': 'png', 'image/webp': 'webp' };

/** One worker: of two cores the other one stays with the person. */
async function startWorkers(): Promise<Piscina> {
  const { Piscina: Workers } = await import('piscina');
  return new Workers({ filename: new URL('./shrink.mjs', import.meta.url).href, minThreads: 0, maxThreads: 1, idleTimeout: 30_000 });
}

/**
 * When the photo says that it was taken, as ISO 8601 by the camera's own clock, with its offset from UTC where the camera wrote one; null
 * where it does not say a time that can be.
 */
async function takenAt(bytes: Uint8Array): Promise<string | null> {
  const { default: exifr } = await import('exifr');
  const options = { pick: ['DateTimeOriginal', 'OffsetTimeOriginal'], reviveValues: false };
  const tags = (await exifr.parse(bytes, options).catch(() => undefined)) as Record<string, unknown> | undefined;
  const match = /^(\d{4}):(\d\d):(\d\d) (\d\d:\d\d:\d\d)$/.exec(String(tags?.['DateTimeOriginal']));
  if (!match) return null;
  const at = `${match[1]}-${match[2]}-${match[3]}T${match[4]}`;
  const time = new Date(`${at}Z`);
  if (Number.isNaN(time.getTime()) || !time.toISOString().startsWith(at)) return null;
  return at + (/^[+-]\d\d:\d\d$/.exec(String(tags?.['OffsetTimeOriginal']))?.[0] ?? '');
}
