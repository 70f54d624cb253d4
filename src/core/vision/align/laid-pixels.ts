import type { Pixels } from '../image/plane.ts';
import type { PixelMap } from './laid-on.ts';

/** Colour of what was not seen in the other picture. */
const NOT_SEEN = 128;

/**
 * A picture as it lies in a frame, in its own light: three channels of the size of `map`, bilinear; an even grey where the picture does not reach. For looking at,
 * side by side with the reference.
 */
export function laidPixels({ x, y }: PixelMap, picture: Pixels): Pixels {
  const { width, height } = x;
  const data = new Uint8Array(3 * width * height).fill(NOT_SEEN);
  for (let i = 0; i < x.data.length; i++) sampleInto(data, 3 * i, picture, x.data[i]!, y.data[i]!);
  return { width, height, channels: 3, data };
}

/** The three channels of a place between pixels; nothing is written outside of the picture. */
export function sampleInto(out: Uint8Array, at: number, { width, height, channels, data }: Pixels, x: number, y: number): void {
  if (!(x >= 0 && y >= 0 && x <= width - 1 && y <= height - 1)) return;
  const x0 = Math.min(width - 2, Math.floor(x));
  const y0 = Math.min(height - 2, Math.floor(y));
  const i = (y0 * width + x0) * channels;
  const below = i + width * channels;
  const [fx, fy] = [x - x0, y - y0];
  for (let c = 0; c < 3; c++) {
    const k = channels === 1 ? 0 : c;
    const top = data[i + k]! + fx * (data[i + channels + k]! - data[i + k]!);
    const bottom = data[below + k]! + fx * (data[below + channels + k]! - data[below + k]!);
    out[at + c] = top + fy * (bottom - top) + 0.5;
  }
}
