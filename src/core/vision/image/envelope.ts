import type { Plane } from './plane.ts';

/** The least value within `radius` px along both axes (a square window), at each pixel. */
export const lowest = (plane: Plane, radius: number): Plane => windowed(plane, radius, Math.min);

/** The greatest value within `radius` px along both axes (a square window), at each pixel. */
export const highest = (plane: Plane, radius: number): Plane => windowed(plane, radius, Math.max);

function windowed(plane: Plane, radius: number, pick: (a: number, b: number) => number): Plane {
  let out = plane;
  for (let left = radius; left > 0; left--) out = pick === Math.min ? lowestOnce(out) : highestOnce(out);
  return out;
}

function lowestOnce({ width, height, data }: Plane): Plane {
  const half = new Float32Array(data.length);
  const out = new Float32Array(data.length);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      let v = data[i]!;
      if (x > 0 && data[i - 1]! < v) v = data[i - 1]!;
      if (x < width - 1 && data[i + 1]! < v) v = data[i + 1]!;
      half[i] = v;
    }
  }
  for (let y = 0, i = 0; y < height; y++) {
    const up = y > 0 ? -width : 0;
    const down = y < height - 1 ? width : 0;
    for (let x = 0; x < width; x++, i++) {
      let v = half[i]!;
      if (half[i + up]! < v) v = half[i + up]!;
      if (half[i + down]! < v) v = half[i + down]!;
      out[i] = v;
    }
  }
  return { width, height, data: out };
}

function highestOnce({ width, height, data }: Plane): Plane {
  const negative = { width, height, data: data.map((v) => -v) };
  const low = lowestOnce(negative);
  for (let i = 0; i < low.data.length; i++) low.data[i] = -low.data[i]!;
  return low;
}
