import sharp from 'sharp';

sharp.cache(false);
sharp.concurrency(1);

/** Widest side of the two smaller sizes, in pixels. */
const VIEW_PX = 2048;
const THUMB_PX = 320;
const MAX_PIXELS = 80e6;

/**
 * Decodes a picture whole and makes its smaller sizes: upright, in sRGB, without any of its metadata.
 * A picture that cannot be decoded to the end is an answer, not an exception.
 */
export default async function shrink(bytes) {
  try {
    const decoded = sharp(bytes, { failOn: 'error', limitInputPixels: MAX_PIXELS, animated: false });
    const upright = decoded.rotate().toColourspace('srgb').flatten({ background: '#ffffff' });
    const view = await sized(upright, VIEW_PX, 85).toBuffer({ resolveWithObject: true });
    const thumb = await sized(sharp(view.data), THUMB_PX, 80).toBuffer();
    return { ok: true, view: view.data, thumb };
  } catch (error) {
    return { ok: false, detail: String(error?.message ?? error).split('\n')[0] };
  }
}

const sized = (picture, px, quality) =>
  picture.resize({ width: px, height: px, fit: 'inside', withoutEnlargement: true }).jpeg({ quality, mozjpeg: false });
