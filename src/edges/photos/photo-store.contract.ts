import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PhotoStore } from '../../bench/ports.ts';

/** A picture that no other colour gives. */
const picture = (background: string): Promise<Buffer> =>
  sharp({ create: { width: 90, height: 60, channels: 3, background } })
    .jpeg()
    .toBuffer();

/** What every store of photos keeps to, whatever it stands on. `open` opens the same one each time, at first empty. */
export function photoStoreContract(name: string, open: () => PhotoStore | Promise<PhotoStore>): void {
  describe(`the contract of photo stores, kept by ${name}: a photo`, () => {
    let photos: PhotoStore;
    beforeAll(async () => void (photos = await open()));
    afterAll(() => photos.close());

    const kept = async (bytes: Uint8Array, called = 'a.jpg') => {
      const put = await photos.put(called, bytes);
      if (!put.ok) throw new Error(put.code);
      return put;
    };

    it('comes back as it came, with a view and a thumbnail', async () => {
      const bytes = await picture('#123456');
      const { photo, duplicate } = await kept(bytes);
      expect([photo.mediaType, photo.widthPx, photo.heightPx, photo.bytes, duplicate]).toEqual(['image/jpeg', 90, 60, bytes.length, false]);
      const original = await photos.get(photo.hash, 'original');
      expect(Buffer.compare(Buffer.from(original!.bytes), bytes)).toBe(0);
      expect(original!.mediaType).toBe('image/jpeg');
      for (const size of ['view', 'thumb'] as const)
        expect(await sharp((await photos.get(photo.hash, size))!.bytes).metadata()).toMatchObject({ width: 90, format: 'jpeg' });
    });

    it('is one photo however often it is sent, also at once', async () => {
      const bytes = await picture('#654321');
      const results = await Promise.all([photos.put('a.jpg', bytes), photos.put('b.jpg', bytes)]);
      expect(results.map((result) => result.ok && result.duplicate).toSorted()).toEqual([false, true]);
      expect((await kept(bytes)).duplicate).toBe(true);
    });

    it('is listed once, in the order of hashes', async () => {
      const hashes = (await photos.list()).map(({ hash }) => hash);
      expect(hashes).toHaveLength(2);
      expect(hashes).toEqual(hashes.toSorted());
    });

    it('that is no picture leaves nothing behind', async () => {
      expect(await photos.put('a.jpg', (await picture('#222222')).subarray(0, 300))).toMatchObject({ ok: false, code: 'photo-corrupt' });
      expect(await photos.list()).toHaveLength(2);
    });

    it('that is not there is null, whatever it is called', async () => {
      for (const hash of ['0'.repeat(64), '../../etc/passwd', '']) expect(await photos.get(hash, 'view')).toBeNull();
    });

    it('is there for whoever opens the store next', async () => {
      const again = await open();
      expect(await again.list()).toEqual(await photos.list());
      await again.close();
    });
  });
}
