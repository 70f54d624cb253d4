import { gaussianBlur } from '../image/blur.ts';
import { components } from '../image/components.ts';
import type { Plane } from '../image/plane.ts';
import { resized } from '../image/resample.ts';
import type { Homography } from '../picture-library.ts';
import { fourPointMap, type Point, type Quad } from './four-point-map.ts';
import { cornersOf } from './homography.ts';

const SMALL_PX = 300;
/** Grey by which a board stands out from the table. */
const STANDS_OUT = 14;

/**
 * Maps by the outlines of the boards alone: where a board lies on an even table, its four corners taken to the four corners of the board in the reference (or of the
 * whole reference, when it fills it), in each of the four turns. For boards of which matched points say too little. They are judged like any other map.
 */
export function outlineMaps(reference: Plane, other: Plane): Homography[] {
  const there = boardQuad(other);
  if (!there) return [];
  const whole = cornersOf(reference.width, reference.height) as unknown as Quad;
  const own = boardQuad(reference);
  return (own ? [whole, own] : [whole]).flatMap((here) =>
    [0, 1, 2, 3].flatMap((turn) => {
      const to = [0, 1, 2, 3].map((k) => there[(k + turn) % 4]!) as unknown as Quad;
      const map = fourPointMap(here, to);
      return map ? [map] : [];
    }),
  );
}

/** The four corners of what stands out from the table, clockwise as seen; undefined where it reaches the border, is too small or not four-sided. */
export function boardQuad(picture: Plane): Quad | undefined {
  const factor = Math.min(1, SMALL_PX / Math.max(picture.width, picture.height));
  const small = gaussianBlur(resized(picture, Math.round(picture.width * factor), Math.round(picture.height * factor)), 1);
  const hull = hullOf(standingOut(small), small);
  if (!hull) return undefined;
  const quad = greatestQuad(hull);
  if (!quad || areaOf(quad) < 0.9 * areaOf(hull) || areaOf(quad) < 0.1 * small.width * small.height) return undefined;
  const scale = picture.width / small.width;
  return quad.map(([x, y]) => [(x + 0.5) * scale - 0.5, (y + 0.5) * scale - 0.5] as Point) as unknown as Quad;
}

/** 1 where a pixel differs from the table, whose brightness is taken as a plane through the picture's border. */
function standingOut({ width, height, data }: Plane): Uint8Array {
  const border = (f: (i: number) => void): void => {
    for (let x = 0; x < width; x++) [x, (height - 1) * width + x].forEach(f);
    for (let y = 0; y < height; y++) [y * width, y * width + width - 1].forEach(f);
  };
  let [n, s, sx, sy, xx, yy] = [0, 0, 0, 0, 0, 0];
  border((i) => {
    const u = (i % width) / width - 0.5;
    const v = Math.floor(i / width) / height - 0.5;
    n++;
    s += data[i]!;
    sx += u * data[i]!;
    sy += v * data[i]!;
    xx += u * u;
    yy += v * v;
  });
  return Uint8Array.from(data, (value, i) => {
    const table = s / n + (sx / xx) * ((i % width) / width - 0.5) + (sy / yy) * (Math.floor(i / width) / height - 0.5);
    return Number(Math.abs(value - table) > STANDS_OUT);
  });
}

function hullOf(mask: Uint8Array, { width, height }: Plane): Point[] | undefined {
  const groups = components(mask, width).filter(({ pixels }) => pixels.length > 0.002 * mask.length);
  const points = groups.flatMap(({ pixels }) => pixels.map((i): Point => [i % width, Math.floor(i / width)]));
  if (points.length < 0.03 * mask.length) return undefined;
  if (groups.some(({ left, top, right, bottom }) => left < 1 || top < 1 || right > width - 2 || bottom > height - 2)) return undefined;
  const sorted = points.sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return [...half(sorted), ...half(sorted.toReversed())];
}

function half(points: readonly Point[]): Point[] {
  const out: Point[] = [];
  for (const p of points) {
    while (out.length > 1 && cross(out.at(-2)!, out.at(-1)!, p) <= 0) out.pop();
    out.push(p);
  }
  return out.slice(0, -1);
}

const cross = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

const areaOf = (polygon: readonly Point[]): number =>
  Math.abs(polygon.reduce((sum, p, i) => sum + cross([0, 0], p, polygon[(i + 1) % polygon.length]!), 0)) / 2;

/** The four corners of a convex polygon that hold most area, in its order: start from its extremes and move each as long as it helps. */
function greatestQuad(hull: readonly Point[]): Quad | undefined {
  const n = hull.length;
  if (n < 4) return undefined;
  let best: number[] | undefined;
  let most = 0;
  for (const start of [0, 1, 2, 3, 4, 5].map((k) => Math.floor((k * n) / 24))) {
    const at = [0, 1, 2, 3].map((k) => (start + Math.floor((k * n) / 4)) % n);
    let area = areaOf(at.map((i) => hull[i]!));
    for (let moved = true; moved;) {
      moved = false;
      for (let k = 0; k < 4; k++)
        for (let i = 0; i < n; i++) {
          const tried = at.map((old, j) => (j === k ? i : old)).sort((a, b) => a - b);
          const value = areaOf(tried.map((j) => hull[j]!));
          if (value <= area + 1e-9) continue;
          at.splice(0, 4, ...tried);
          area = value;
          moved = true;
        }
    }
    if (area > most) {
      most = area;
      best = at.slice();
    }
  }
  return best?.sort((a, b) => a - b).map((i) => hull[i]!) as unknown as Quad | undefined;
}
