import { leastSquares } from '../../numeric/index.ts';
import { gaussianBlur } from '../image/blur.ts';
import type { Plane } from '../image/plane.ts';
import { halved } from '../image/resample.ts';
import type { Homography } from '../picture-library.ts';
import { composed, cornersApart, rescaled, warpedByHomography } from './homography.ts';

const ROUNDS = 8;
/** Grey differences above this (of evened pictures) are taken for true differences and lose their say. */
const ROBUST_GREY = 45;

/**
 * The map made better by the brightness itself, from the coarsest to the finest of the named levels: Gauss–Newton steps on all eight numbers of the map, every pixel with edge having its say, true differences
 * losing theirs. Both pictures in even light. Source: S. Baker, I. Matthews, IJCV 56 (2004), forward compositional, eq. 21–26, with the mean of both
 * gradients (S. Benhimane, E. Malis, IROS 2004) and weights 1/(1 + (e/s)²).
 */
export function refinedMap(pyramid: readonly PairLevel[], start: Homography, coarsest: number, finest: number): Homography {
  let map = start;
  for (let level = coarsest; level >= finest; level--) {
    const factor = 2 ** level;
    const { reference, other } = pyramid[level]!;
    let here = rescaled(map, 1 / factor, 1 / factor);
    for (let round = 0; round < (level === 0 ? 3 : ROUNDS); round++) {
      const step = stepOf(reference, warpedByHomography(other, here, reference.width, reference.height));
      if (!step) break;
      const next = composed(here, step);
      const moved = cornersApart(next, here, reference.width, reference.height);
      here = next;
      if (moved < 0.05) break;
    }
    map = rescaled(here, factor, factor);
  }
  return map;
}

/** A pair at one size, both a little smoothed. */
export interface PairLevel {
  readonly reference: Plane;
  readonly other: Plane;
}

/** The pair at full size and halved `halvings` times, each level smoothed. */
export function pairPyramid(reference: Plane, other: Plane, halvings: number): PairLevel[] {
  const levels = [{ reference, other }];
  for (let i = 0; i < halvings; i++) {
    const last = levels.at(-1)!;
    levels.push({ reference: halved(last.reference), other: halved(last.other) });
  }
  return levels.map((level) => ({ reference: gaussianBlur(level.reference, 1), other: gaussianBlur(level.other, 1) }));
}

/** One step: the small map of the reference's plane after which the laid picture fits better. Null where edges do not tell it. */
function stepOf(a: Plane, laid: Plane): Homography | null {
  const { width, height } = a;
  const half = width / 2;
  const normal = new Float64Array(64);
  const right = new Float64Array(8);
  const j = new Float64Array(8);
  const p = a.data;
  const q = laid.data;
  for (let v = 1; v < height - 1; v++) {
    const y = (v - height / 2) / half;
    for (let u = 1, i = v * width + 1; u < width - 1; u++, i++) {
      const gx = (p[i + 1]! - p[i - 1]! + q[i + 1]! - q[i - 1]!) / 4;
      const gy = (p[i + width]! - p[i - width]! + q[i + width]! - q[i - width]!) / 4;
      if (gx * gx + gy * gy < 9) continue;
      const e = (p[i]! - q[i]!) / half;
      const weight = 1 / (1 + ((e * half) / ROBUST_GREY) ** 2);
      const x = (u - half) / half;
      const along = gx * x + gy * y;
      j[0] = gx * x;
      j[1] = gx * y;
      j[2] = gx;
      j[3] = gy * x;
      j[4] = gy * y;
      j[5] = gy;
      j[6] = -x * along;
      j[7] = -y * along;
      for (let r = 0; r < 8; r++) {
        const w = weight * j[r]!;
        right[r]! += w * e;
        for (let c = r; c < 8; c++) normal[r * 8 + c]! += w * j[c]!;
      }
    }
  }
  return mapOf(normal, right, width, height);
}

/** Solves the normal equations, slightly damped, and brings the step from coordinates of −1..1 back to pixels. */
function mapOf(normal: Float64Array, right: Float64Array, width: number, height: number): Homography | null {
  const rows = Array.from({ length: 8 }, (_, r) => Array.from({ length: 8 }, (__, c) => normal[Math.min(r, c) * 8 + Math.max(r, c)]!));
  const most = Math.max(...rows.map((row, r) => row[r]!));
  rows.forEach((row, r) => (row[r]! += 1e-4 * most));
  const fit = leastSquares(rows, [...right]);
  if (!fit) return null;
  const [a, b, c, d, e, f, g, h] = fit.coefficients as unknown as number[] as [
    number,
    number,
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const half = width / 2;
  const small: Homography = [1 + a, b, c, d, 1 + e, f, g, h, 1];
  const toUnit: Homography = [1 / half, 0, -1, 0, 1 / half, -height / width, 0, 0, 1];
  const toPixels: Homography = [half, 0, half, 0, half, height / 2, 0, 0, 1];
  return composed(toPixels, composed(small, toUnit));
}
