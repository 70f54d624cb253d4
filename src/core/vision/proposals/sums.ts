import type { Plane } from '../image/plane.ts';

/** Sums over the rectangle from the first corner up to each place: a mean over any rectangle then takes four look-ups (F. Crow, SIGGRAPH 1984). */
export interface Sums {
  readonly width: number;
  readonly height: number;
  readonly data: Float64Array;
}

export function sumsOf({ width, height, data }: Plane): Sums {
  const sums = new Float64Array((width + 1) * (height + 1));
  for (let y = 0; y < height; y++) {
    let row = 0;
    for (let x = 0; x < width; x++) {
      row += data[y * width + x]!;
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1]! + row;
    }
  }
  return { width, height, data: sums };
}

/** The sum over `left ≤ x < right`, `top ≤ y < bottom`, whole numbers, cut to the plane. */
export function sumIn({ width, height, data }: Sums, left: number, top: number, right: number, bottom: number): number {
  const x0 = Math.max(0, Math.min(width, left));
  const x1 = Math.max(x0, Math.min(width, right));
  const y0 = Math.max(0, Math.min(height, top));
  const y1 = Math.max(y0, Math.min(height, bottom));
  const row = width + 1;
  return data[y1 * row + x1]! - data[y0 * row + x1]! - data[y1 * row + x0]! + data[y0 * row + x0]!;
}

/** The mean over the same rectangle; at least one pixel is looked at. */
export function meanIn(sums: Sums, left: number, top: number, right: number, bottom: number): number {
  const x0 = Math.max(0, Math.min(sums.width - 1, Math.floor(left)));
  const y0 = Math.max(0, Math.min(sums.height - 1, Math.floor(top)));
  const x1 = Math.max(x0 + 1, Math.min(sums.width, Math.round(right)));
  const y1 = Math.max(y0 + 1, Math.min(sums.height, Math.round(bottom)));
  return sumIn(sums, x0, y0, x1, y1) / ((x1 - x0) * (y1 - y0));
}
