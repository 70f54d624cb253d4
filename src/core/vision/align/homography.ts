import { planeOf, type Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';
import type { Homography } from '../picture-library.ts';

export const IDENTITY: Homography = [1, 0, 0, 0, 1, 0, 0, 0, 1];

/** Where a point goes. */
export function mapped(h: Homography, x: number, y: number): [number, number] {
  const w = h[6] * x + h[7] * y + h[8];
  return [(h[0] * x + h[1] * y + h[2]) / w, (h[3] * x + h[4] * y + h[5]) / w];
}

/** First `inner`, then `outer`. */
export function composed(outer: Homography, inner: Homography): Homography {
  const product = Array.from({ length: 9 }, (_, i) => {
    const row = Math.floor(i / 3) * 3;
    const column = i % 3;
    return outer[row]! * inner[column]! + outer[row + 1]! * inner[column + 3]! + outer[row + 2]! * inner[column + 6]!;
  });
  return normalised(product);
}

/** The map back. Null where the map flattens the plane. */
export function inverted(h: Homography): Homography | null {
  const [a, b, c, d, e, f, g, i, j] = h;
  const det = a * (e * j - f * i) - b * (d * j - f * g) + c * (d * i - e * g);
  if (Math.abs(det) < 1e-12) return null;
  return normalised([
    e * j - f * i,
    c * i - b * j,
    b * f - c * e,
    f * g - d * j,
    a * j - c * g,
    c * d - a * f,
    d * i - e * g,
    b * g - a * i,
    a * e - b * d,
  ]);
}

function normalised(m: readonly number[]): Homography {
  return m.map((value) => value / m[8]!) as unknown as Homography;
}

/** The same map between pictures `fromFactor` and `toFactor` times the size (pixel centres at whole numbers; half-pixel shifts included). */
export function rescaled(h: Homography, fromFactor: number, toFactor: number): Homography {
  const shrink: Homography = [1 / fromFactor, 0, 0.5 / fromFactor - 0.5, 0, 1 / fromFactor, 0.5 / fromFactor - 0.5, 0, 0, 1];
  const stretch: Homography = [toFactor, 0, 0.5 * toFactor - 0.5, 0, toFactor, 0.5 * toFactor - 0.5, 0, 0, 1];
  return composed(stretch, composed(h, shrink));
}

/** `source` seen in the frame that `h` maps from, `width × height`; border values outside. */
export function warpedByHomography(source: Plane, h: Homography, width: number, height: number): Plane {
  const out = planeOf(width, height);
  for (let y = 0, i = 0; y < height; y++) {
    let u = h[1] * y + h[2];
    let v = h[4] * y + h[5];
    let w = h[7] * y + h[8];
    for (let x = 0; x < width; x++, i++) {
      out.data[i] = valueAt(source, u / w, v / w);
      u += h[0];
      v += h[3];
      w += h[6];
    }
  }
  return out;
}

/** 1 where a place of the frame that `h` maps from is seen in a picture of `sourceWidth × sourceHeight`, `margin` px of its border left out. */
export function seenIn(
  h: Homography,
  width: number,
  height: number,
  sourceWidth: number,
  sourceHeight: number,
  margin: number,
): Uint8Array {
  const seen = new Uint8Array(width * height);
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const [u, v] = mapped(h, x, y);
      if (u >= margin && v >= margin && u <= sourceWidth - 1 - margin && v <= sourceHeight - 1 - margin) seen[i] = 1;
    }
  }
  return seen;
}

/** Whether a map could come from two photos of one flat thing: orientation kept, no corner behind the camera, size within 1:6, no side folded. */
export function isPlausible(h: Homography, width: number, height: number): boolean {
  const corners = cornersOf(width, height);
  if (corners.some(([x, y]) => h[6] * x + h[7] * y + h[8] <= 0.2)) return false;
  const at = corners.map(([x, y]) => mapped(h, x, y));
  const turns = at.map((p, i) => {
    const q = at[(i + 1) % 4]!;
    const r = at[(i + 2) % 4]!;
    return (q[0] - p[0]) * (r[1] - q[1]) - (q[1] - p[1]) * (r[0] - q[0]);
  });
  const area = turns.reduce((sum, turn) => sum + turn, 0) / 4;
  const growth = Math.sqrt(Math.max(0, area) / (width * height));
  return turns.every((turn) => turn > 0) && growth > 1 / 6 && growth < 6 && Math.max(...turns) < 4 * Math.min(...turns);
}

export const cornersOf = (width: number, height: number): [number, number][] => [
  [0, 0],
  [width - 1, 0],
  [width - 1, height - 1],
  [0, height - 1],
];

/** The greatest distance between where two maps send the corners of a picture. */
export function cornersApart(a: Homography, b: Homography, width: number, height: number): number {
  return Math.max(
    ...cornersOf(width, height).map(([x, y]) => {
      const [ax, ay] = mapped(a, x, y);
      const [bx, by] = mapped(b, x, y);
      return Math.hypot(ax - bx, ay - by);
    }),
  );
}
