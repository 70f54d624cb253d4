import type { Picture } from '../image/picture.ts';
import { eachPlane } from '../image/picture.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';
import type { Homography } from '../picture-library.ts';
import { gridRow, type Displacement } from './displacement.ts';

/** For each pixel of a frame, the place in another picture. */
export interface PixelMap {
  readonly x: Plane;
  readonly y: Plane;
}

/** The pixel map of a frame of `width × height` under p → h(p + d(p)). */
export function pixelMapOf(h: Homography, { step, dx, dy }: Displacement, width: number, height: number): PixelMap {
  const map = { x: planeOf(width, height), y: planeOf(width, height) };
  const across = new Float32Array(width);
  const down = new Float32Array(width);
  for (let y = 0, i = 0; y < height; y++) {
    gridRow(dx, y / step, step, across);
    gridRow(dy, y / step, step, down);
    for (let x = 0; x < width; x++, i++) {
      const u = x + across[x]!;
      const v = y + down[x]!;
      const w = h[6] * u + h[7] * v + h[8];
      map.x.data[i] = (h[0] * u + h[1] * v + h[2]) / w;
      map.y.data[i] = (h[3] * u + h[4] * v + h[5]) / w;
    }
  }
  return map;
}

/** `picture` seen through a pixel map: what lies on the reference pixel by pixel. */
export const laidOn = (map: PixelMap, picture: Picture): Picture => eachPlane(picture, (plane) => sampled(map, plane));

function sampled({ x, y }: PixelMap, plane: Plane): Plane {
  const out = planeOf(x.width, x.height);
  for (let i = 0; i < out.data.length; i++) out.data[i] = valueAt(plane, x.data[i]!, y.data[i]!);
  return out;
}

/** 1 where a pixel map stays within a picture of this size, `margin` px from its border. */
export function insideOf({ x, y }: PixelMap, width: number, height: number, margin: number): Uint8Array {
  const inside = new Uint8Array(x.data.length);
  for (let i = 0; i < inside.length; i++) {
    const u = x.data[i]!;
    const v = y.data[i]!;
    if (u >= margin && v >= margin && u <= width - 1 - margin && v <= height - 1 - margin) inside[i] = 1;
  }
  return inside;
}
