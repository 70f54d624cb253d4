import type { Point, Quad } from '../align/four-point-map.ts';
import { components } from '../image/components.ts';
import { envelopesOf } from '../image/envelope.ts';
import type { Plane } from '../image/plane.ts';
import { resized } from '../image/resample.ts';

/** Longer side at which a screen is looked for, px: enough for its corners to a pixel or two of the photo. */
const SOUGHT_PX = 500;
/** Dark lines up to twice as wide are filled, px of the small picture. */
const FILLED_PX = 5;
/** A screen fills at least so much of the photo, and at least so much of the box between its corners. */
const LEAST_OF_PHOTO = 0.04;
const LEAST_OF_QUAD = 0.85;

/** Corners of the brightest large four-cornered thing, clockwise from the upper left, px of the photo; null where there is none such. */
export function findScreen(light: Plane): Quad | null {
  const factor = Math.max(1, Math.max(light.width, light.height) / SOUGHT_PX);
  const small = resized(light, Math.round(light.width / factor), Math.round(light.height / factor));
  const whole = closed(small);
  const level = otsu(whole.data);
  const groups = components(
    Uint8Array.from(whole.data, (value) => (value > level ? 1 : 0)),
    small.width,
  );
  const largest = groups.toSorted((a, b) => b.pixels.length - a.pixels.length)[0];
  if (!largest || largest.pixels.length < LEAST_OF_PHOTO * small.data.length) return null;
  const quad = extremes(largest.pixels, small.width);
  if (largest.pixels.length < LEAST_OF_QUAD * areaOf(quad)) return null;
  const [sx, sy] = [light.width / small.width, light.height / small.height];
  return quad.map(([x, y]): Point => [(x + 0.5) * sx - 0.5, (y + 0.5) * sy - 0.5]) as unknown as Quad;
}

/** The picture with its narrow dark places filled, so that a dead line does not part the screen. */
const closed = (plane: Plane): Plane => envelopesOf(envelopesOf(plane, FILLED_PX).at(-1)!.high, FILLED_PX).at(-1)!.low;

/** The points that lie farthest towards each corner of the picture. */
function extremes(pixels: readonly number[], width: number): Quad {
  const towards = (dx: number, dy: number): Point => {
    let best: Point = [0, 0];
    let most = -Infinity;
    for (const i of pixels) {
      const x = i % width;
      const y = (i - x) / width;
      if (dx * x + dy * y > most) [most, best] = [dx * x + dy * y, [x, y]];
    }
    return best;
  };
  return [towards(-1, -1), towards(1, -1), towards(1, 1), towards(-1, 1)];
}

const areaOf = (quad: Quad): number =>
  Math.abs(
    quad.reduce((sum, [x, y], i) => {
      const [u, v] = quad[(i + 1) % 4]!;
      return sum + (x * v - u * y) / 2;
    }, 0),
  );

/** The level that parts values 0..255 into two groups with the least spread within (N. Otsu, 1979). */
function otsu(values: Float32Array): number {
  const counts = new Float64Array(256);
  for (const value of values) counts[Math.max(0, Math.min(255, Math.round(value)))]!++;
  const total = values.length;
  const sum = counts.reduce((all, count, level) => all + count * level, 0);
  let [below, sumBelow, best, at] = [0, 0, -1, 127];
  for (let level = 0; level < 255; level++) {
    below += counts[level]!;
    sumBelow += counts[level]! * level;
    if (below === 0 || below === total) continue;
    const between = below * (total - below) * (sumBelow / below - (sum - sumBelow) / (total - below)) ** 2;
    if (between > best) [best, at] = [between, level];
  }
  return at;
}
