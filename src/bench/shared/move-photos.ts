import type { PhotoRefusal, PhotoStore } from '../ports.ts';

export type PhotosMoved = { readonly ok: true; readonly photos: number } | PhotoRefusal;

/**
 * Copies photos from one store into another, one at a time; those that are there already stay as they are. A photo is known by the hash of its
 * bytes, so one that arrived otherwise would be refused or be another photo: that counts as corrupt.
 */
export async function movePhotos(from: PhotoStore, to: PhotoStore): Promise<PhotosMoved> {
  const photos = await from.list();
  for (const { hash } of photos) {
    const original = await from.get(hash, 'original');
    const put = await to.put(hash, original?.bytes ?? new Uint8Array());
    if (!put.ok) return put;
    if (put.photo.hash !== hash)
      return { ok: false, code: 'photo-corrupt', name: hash, detail: 'its bytes have another hash than its name' };
  }
  return { ok: true, photos: photos.length };
}
