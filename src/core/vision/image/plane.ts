import { VisionError } from '../vision-error.ts';

/** One channel of a picture, row-major, `width × height` values in 0..255 unless said otherwise. */
export interface Plane {
  readonly width: number;
  readonly height: number;
  readonly data: Float32Array;
}

/** A picture as decoded: row-major, interleaved, 8 bits a channel; 1 (grey), 3 (sRGB) or 4 channels (the fourth is not read). */
export interface Pixels {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3 | 4;
  readonly data: Uint8Array;
}

/** A plane of one value. */
export const planeOf = (width: number, height: number, value = 0): Plane => {
  if (!(width > 0 && height > 0)) throw new VisionError('empty-picture', `a picture needs a width and a height, got ${width} × ${height}`);
  const data = new Float32Array(width * height);
  if (value !== 0) data.fill(value);
  return { width, height, data };
};

/** Throws `VisionError` where two planes are not of one size. */
export function sameSize(a: { width: number; height: number }, b: { width: number; height: number }): void {
  if (a.width !== b.width || a.height !== b.height)
    throw new VisionError('sizes-differ', `${a.width} × ${a.height} and ${b.width} × ${b.height} pixels cannot be compared one to one`);
}

/** Luma of a picture, 0..255. Weights: ITU-R BT.601 (from memory), on the encoded values as cameras do. */
export function greyOf({ width, height, channels, data }: Pixels): Plane {
  const grey = planeOf(width, height);
  if (channels === 1) {
    grey.data.set(data);
    return grey;
  }
  for (let i = 0, p = 0; i < grey.data.length; i++, p += channels) {
    grey.data[i] = 0.299 * data[p]! + 0.587 * data[p + 1]! + 0.114 * data[p + 2]!;
  }
  return grey;
}

/**
 * Two opponent colours of a picture: yellow-blue (half the sum of red and green, less blue) and red-green, each −255..255. Zero for a picture of one channel.
 */
export function opponentsOf({ width, height, channels, data }: Pixels): { yellowBlue: Plane; redGreen: Plane } {
  const yellowBlue = planeOf(width, height);
  const redGreen = planeOf(width, height);
  if (channels === 1) return { yellowBlue, redGreen };
  for (let i = 0, p = 0; i < yellowBlue.data.length; i++, p += channels) {
    const r = data[p]!;
    const g = data[p + 1]!;
    yellowBlue.data[i] = (r + g) / 2 - data[p + 2]!;
    redGreen.data[i] = r - g;
  }
  return { yellowBlue, redGreen };
}
