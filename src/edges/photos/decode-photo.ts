import sharp from 'sharp';
import type { ComparedSize } from '../../bench/ports.ts';
import type { Pixels } from '../../core/vision/index.ts';

const MAX_PIXELS = 80e6;

/** A photo that cannot be decoded; its message says why, in one line. */
export class UndecodedPhoto extends Error {}

export interface DecodedPhoto {
  readonly pixels: Pixels;
  readonly size: ComparedSize;
}

/** A photo's pixels, upright, at most `longestPx` on its longer side. JPEG is shrunk while it is decoded. Throws `UndecodedPhoto`. */
export async function decodePhoto(bytes: Uint8Array, longestPx: number): Promise<DecodedPhoto> {
  try {
    const photo = sharp(bytes, { failOn: 'error', limitInputPixels: MAX_PIXELS, animated: false });
    const { width = 1, height = 1 } = await photo.metadata();
    const upright = photo.rotate().flatten({ background: '#ffffff' });
    const sized = upright.resize({ width: longestPx, height: longestPx, fit: 'inside', withoutEnlargement: true });
    const { data, info } = await sized.toColourspace('srgb').raw().toBuffer({ resolveWithObject: true });
    const toOriginal = Math.max(width, height) / Math.max(info.width, info.height);
    const pixels: Pixels = { width: info.width, height: info.height, channels: info.channels as Pixels['channels'], data };
    return { pixels, size: { width: info.width, height: info.height, toOriginal } };
  } catch (error) {
    throw new UndecodedPhoto(String((error as Error).message ?? error).split('\n')[0]);
  }
}
