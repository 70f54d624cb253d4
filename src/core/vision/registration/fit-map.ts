import { leastSquares } from '../../numeric/index.ts';
import type { Point } from '../align/four-point-map.ts';
import { composed, inverted, mapped } from '../align/homography.ts';
import type { Homography } from '../picture-library.ts';

/** A point and where it goes. */
export interface PointPair {
  readonly from: Point;
  readonly to: Point;
}

/** Turn, size and place that take the points to their partners: u = a·x − b·y + c, v = b·x + a·y + d, least squares. Null where all points are one. */
export function similarityOf(pairs: readonly PointPair[]): Homography | null {
  const rows = pairs.flatMap(({ from: [x, y] }) => [
    [x, -y, 1, 0],
    [y, x, 0, 1],
  ]);
  const fit = leastSquares(rows, bothOf(pairs));
  if (!fit) return null;
  const [a, b, c, d] = fit.coefficients;
  return [a!, -b!, c!, b!, a!, d!, 0, 0, 1];
}

/**
 * The plane projective map that takes four points and more to their partners, by least squares of the linear equations with normalised points
 * (R. Hartley, A. Zisserman, "Multiple View Geometry", 2nd ed., algorithm 4.2, the last entry set to 1). Null where the points lie in a line.
 */
export function projectiveOf(pairs: readonly PointPair[]): Homography | null {
  const from = normaliser(pairs.map((pair) => pair.from));
  const to = normaliser(pairs.map((pair) => pair.to));
  const near = pairs.map((pair) => ({ from: mapped(from, ...pair.from), to: mapped(to, ...pair.to) }));
  const rows = near.flatMap(({ from: [x, y], to: [u, v] }) => [
    [x, y, 1, 0, 0, 0, -u * x, -u * y],
    [0, 0, 0, x, y, 1, -v * x, -v * y],
  ]);
  const fit = leastSquares(rows, bothOf(near));
  const back = inverted(to);
  return fit && back && composed(back, composed([...fit.coefficients, 1] as unknown as Homography, from));
}

const bothOf = (pairs: readonly PointPair[]): number[] => pairs.flatMap(({ to }) => [...to]);

/** Middle to the origin, mean distance to √2. */
function normaliser(points: readonly Point[]): Homography {
  const mean = (k: 0 | 1): number => points.reduce((sum, point) => sum + point[k], 0) / points.length;
  const [mx, my] = [mean(0), mean(1)];
  const s = Math.SQRT2 / (points.reduce((sum, [x, y]) => sum + Math.hypot(x - mx, y - my), 0) / points.length);
  return [s, 0, -s * mx, 0, s, -s * my, 0, 0, 1];
}

/** Twice the signed area of the triangle: above zero where c lies to the right of a→b with y down. */
export const cross = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** How much larger a map makes an area at a point; below zero where it turns left into right. */
export function growthAt(map: Homography, [x, y]: Point): number {
  const step = 1e-3;
  return cross(mapped(map, x, y), mapped(map, x + step, y), mapped(map, x, y + step)) / (step * step);
}
