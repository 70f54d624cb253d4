import { boxBlur } from '../image/blur.ts';
import { planeOf, type Pixels } from '../image/plane.ts';

/** A picture of three channels out of focus by a box of this radius, px. */
export function blurredPixels(pixels: Pixels, radius: number): Pixels {
  if (radius === 0) return pixels;
  const { width, height } = pixels;
  const data = new Uint8Array(pixels.data.length);
  for (let c = 0; c < 3; c++) {
    const channel = planeOf(width, height);
    for (let i = 0; i < width * height; i++) channel.data[i] = pixels.data[3 * i + c]!;
    boxBlur(channel, radius).data.forEach((value, i) => (data[3 * i + c] = value));
  }
  return { ...pixels, data };
}
