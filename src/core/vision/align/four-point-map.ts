import type { Homography } from '../picture-library.ts';
import { composed, inverted } from './homography.ts';

export type Point = readonly [number, number];
/** Four corners in order around. */
export type Quad = readonly [Point, Point, Point, Point];

/**
 * The map that takes four points to four others, exactly: for instance marks of known place in board millimetres to where they are seen in a photo. Null where three of
 * them lie on a line. Source: P. Heckbert, "Fundamentals of Texture Mapping", 1989, §2.2.3, by way of the unit square.
 */
export function fourPointMap(from: Quad, to: Quad): Homography | null {
  const a = squareTo(from);
  const back = a && inverted(a);
  const b = squareTo(to);
  return back && b ? composed(b, back) : null;
}

function squareTo([p0, p1, p2, p3]: Quad): Homography | null {
  const [dx1, dx2, sx] = [p1[0] - p2[0], p3[0] - p2[0], p0[0] - p1[0] + p2[0] - p3[0]];
  const [dy1, dy2, sy] = [p1[1] - p2[1], p3[1] - p2[1], p0[1] - p1[1] + p2[1] - p3[1]];
  const det = dx1 * dy2 - dx2 * dy1;
  if (Math.abs(det) < 1e-9) return null;
  const g = (sx * dy2 - dx2 * sy) / det;
  const h = (dx1 * sy - sx * dy1) / det;
  return [
    p1[0] - p0[0] + g * p1[0],
    p3[0] - p0[0] + h * p3[0],
    p0[0],
    p1[1] - p0[1] + g * p1[1],
    p3[1] - p0[1] + h * p3[1],
    p0[1],
    g,
    h,
    1,
  ];
}
