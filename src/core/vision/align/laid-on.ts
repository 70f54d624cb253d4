import type { Picture } from '../image/picture.ts';
import { eachPlane } from '../image/picture.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';
import type { Homography } from '../picture-library.ts';
import { warpedBy, type Displacement } from './displacement.ts';

/** For each pixel of a frame, the place in another picture. */
export interface PixelMap {
  readonly x: Plane;
  readonly y: Plane;
}

/** The pixel map of a frame of `width × height` under p → h(p + d(p)). */
export function pixelMapOf(h: Homography, displacement: Displacement, width: number, height: number): PixelMap {
  const columns = planeOf(width, height);
  const rows = planeOf(width, height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      columns.data[i] = x;
      rows.data[i] = y;
    }
  }
  const moved = { x: warpedBy(columns, displacement, width, height), y: warpedBy(rows, displacement, width, height) };
  const { x, y } = moved;
  for (let i = 0; i < x.data.length; i++) {
    const u = x.data[i]!;
    const v = y.data[i]!;
    const w = h[6] * u + h[7] * v + h[8];
    x.data[i] = (h[0] * u + h[1] * v + h[2]) / w;
    y.data[i] = (h[3] * u + h[4] * v + h[5]) / w;
  }
  return moved;
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
