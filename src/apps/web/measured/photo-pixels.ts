import type { Pixels } from '../../../core/vision/index.ts';

/** Longer side at which a photo of a display is taken apart, px. */
const LONGEST_PX = 1600;

/** The pixels of a photo, upright, at most so large; null when the browser cannot show it. */
export async function photoPixels(file: File): Promise<Pixels | null> {
  const bitmap = await createImageBitmap(file).catch(() => null);
  if (!bitmap) return null;
  const factor = Math.min(1, LONGEST_PX / Math.max(bitmap.width, bitmap.height));
  const [width, height] = [Math.round(bitmap.width * factor), Math.round(bitmap.height * factor)];
  const canvas = document.createElement('canvas');
  Object.assign(canvas, { width, height });
  const context = canvas.getContext('2d', { willReadFrequently: true })!;
  context.drawImage(bitmap, 0, 0, width, height);
  bitmap.close();
  const { data } = context.getImageData(0, 0, width, height);
  return { width, height, channels: 4, data: new Uint8Array(data.buffer) };
}
