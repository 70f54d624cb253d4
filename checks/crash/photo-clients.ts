import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import type { RandomStream } from '../../src/core/numeric/index.ts';

/** A picture that no other one is, of a size and kind drawn from `random`. */
export function somePicture(random: RandomStream, n: number): Promise<Buffer> {
  const [width, height] = [40 + Math.floor(random() * 400), 40 + Math.floor(random() * 400)];
  const background = { r: n % 256, g: Math.floor(n / 256) % 256, b: Math.floor(random() * 256) };
  const picture = sharp({ create: { width, height, channels: 3, background, noise: { type: 'gaussian', mean: 128, sigma: 30 } } });
  return (random() < 0.5 ? picture.jpeg() : picture.png({ compressionLevel: 1 })).toBuffer();
}

/** Sends one picture; its hash when the server says that it is kept, null when the server is gone. */
export async function keepPicture(url: string, bytes: Buffer): Promise<string | null> {
  const form = new FormData();
  form.append('photos', new File([new Uint8Array(bytes)], 'from the bench'));
  try {
    const response = await fetch(`${url}/api/photos`, { method: 'POST', body: form });
    const { results } = (await response.json()) as { results: [{ ok: boolean; photo: { hash: string } }] };
    return results[0].ok ? results[0].photo.hash : null;
  } catch (error) {
    if (error instanceof TypeError || error instanceof SyntaxError) return null;
    throw error;
  }
}

/** Hashes of these that do not come back whole, in all three sizes. */
export async function missingPictures(url: string, hashes: readonly string[]): Promise<string[]> {
  const missing: string[] = [];
  for (const hash of hashes) {
    const [original, view, thumb] = await Promise.all(
      ['original', 'view', 'thumb'].map((size) => bytesOf(`${url}/photos/${hash}/${size}`)),
    );
    const isWhole = original && hashOf(original) === hash && (await decodes(view)) && (await decodes(thumb));
    if (!isWhole) missing.push(hash);
  }
  return missing;
}

const hashOf = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

async function bytesOf(url: string): Promise<Uint8Array | null> {
  const response = await fetch(url);
  return response.ok ? new Uint8Array(await response.arrayBuffer()) : null;
}

const decodes = async (bytes: Uint8Array | null | undefined): Promise<boolean> =>
  Boolean(bytes) &&
  sharp(bytes!)
    .raw()
    .toBuffer()
    .then(
      () => true,
      () => false,
    );

/** Files below a folder of photos that are not whole: leftovers of a write, and originals that are not what their name says. */
export function halfFiles(dir: string): string[] {
  const names = readdirSync(dir, { recursive: true, encoding: 'utf8' });
  return names.filter((name) => {
    if (name.endsWith('.part')) return true;
    const hash = /([0-9a-f]{64})\.(?:jpg|png)$/.exec(name)?.[1];
    return hash !== undefined && hashOf(readFileSync(join(dir, name))) !== hash;
  });
}
