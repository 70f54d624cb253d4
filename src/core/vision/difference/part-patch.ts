import type { Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';

/** A known part in the reference picture: its middle, size and turn, in px and degrees. */
export interface PartPatch {
  readonly part: string;
  readonly x: number;
  readonly y: number;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly turnDeg: number;
}

/** How a part's patch is found again in the other picture. */
export interface PatchFit {
  /** Correlation as it lies, and at its best place; −1..1. */
  readonly asItLies: number;
  readonly best: number;
  /** Where its best place is: shift in px, turn in degrees. */
  readonly dx: number;
  readonly dy: number;
  readonly turnDeg: number;
}

const TURNS_DEG = [-6, 6, -12, 12];
/** A part seen from another side shifts by its height; a shift of up to this share of its shorter side is not held against it. */
export const USUAL_SHIFT = 0.3;

/**
 * Finds a part of the reference again in `other` (both in one frame): the shift within `searchPx` and the turn within 12° at which the patch correlates best. So a
 * tall part seen from another angle is found a little displaced instead of being called gone.
 */
export function findPatch(reference: Plane, other: Plane, part: PartPatch, searchPx: number): PatchFit {
  const points = samplePoints(part);
  const values = points.map(([u, v]) => valueAt(reference, part.x + u, part.y + v));
  const fit = (dx: number, dy: number, turnDeg: number): number => correlationAt(other, part, points, values, dx, dy, turnDeg);
  const asItLies = fit(0, 0, 0);
  let best = { asItLies, best: asItLies, dx: 0, dy: 0, turnDeg: 0 };
  const offer = (dx: number, dy: number, turnDeg: number): void => {
    const value = fit(dx, dy, turnDeg);
    if (value > best.best) best = { asItLies, best: value, dx, dy, turnDeg };
  };
  const stride = Math.max(1, Math.min(4, Math.floor(searchPx / 4)));
  for (let dy = -searchPx; dy <= searchPx; dy += stride) for (let dx = -searchPx; dx <= searchPx; dx += stride) offer(dx, dy, 0);
  const { dx: nearX, dy: nearY } = best;
  for (const turn of TURNS_DEG)
    for (let dy = -2 * stride; dy <= 2 * stride; dy += stride)
      for (let dx = -2 * stride; dx <= 2 * stride; dx += stride) offer(nearX + dx, nearY + dy, turn);
  for (let step = stride / 2; step >= 0.5; step /= 2) {
    const { dx, dy, turnDeg } = best;
    for (const turn of [turnDeg, turnDeg - 3, turnDeg + 3])
      for (const y of [dy - step, dy, dy + step]) for (const x of [dx - step, dx, dx + step]) offer(x, y, turn);
  }
  return best;
}

/** Some 400 places over the patch and a rim around it, from its middle. */
function samplePoints({ widthPx, heightPx, turnDeg }: PartPatch): [number, number][] {
  const [w, h] = [widthPx * 1.15 + 2, heightPx * 1.15 + 2];
  const step = Math.max(1, Math.sqrt((w * h) / 400));
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  const points: [number, number][] = [];
  for (let v = -h / 2; v <= h / 2; v += step)
    for (let u = -w / 2; u <= w / 2; u += step) points.push([u * cos - v * sin, u * sin + v * cos]);
  return points;
}

function correlationAt(
  other: Plane,
  part: PartPatch,
  points: readonly (readonly [number, number])[],
  values: readonly number[],
  dx: number,
  dy: number,
  turnDeg: number,
): number {
  const [cos, sin] = [Math.cos((turnDeg * Math.PI) / 180), Math.sin((turnDeg * Math.PI) / 180)];
  let [a, b, aa, bb, ab] = [0, 0, 0, 0, 0];
  const n = points.length;
  for (let k = 0; k < n; k++) {
    const [u, v] = points[k]!;
    const p = values[k]!;
    const q = valueAt(other, part.x + dx + u * cos - v * sin, part.y + dy + u * sin + v * cos);
    a += p;
    b += q;
    aa += p * p;
    bb += q * q;
    ab += p * q;
  }
  return (ab - (a * b) / n) / Math.sqrt((aa - (a * a) / n + n) * (bb - (b * b) / n + n));
}

/** Whether a part is displaced no farther than its height alone may displace it. */
export const isWithinUsualShift = ({ dx, dy }: PatchFit, { widthPx, heightPx }: PartPatch): boolean =>
  Math.hypot(dx, dy) <= USUAL_SHIFT * Math.min(widthPx, heightPx) + 2;

/** Whether a fit says that the part is there, unchanged, and merely seen from another side. */
export const isMerelyShifted = (fit: PatchFit, part: PartPatch): boolean =>
  fit.best > 0.9 && isWithinUsualShift(fit, part) && Math.abs(fit.turnDeg) < 4;

/** The part whose turned rectangle, a little widened, holds the point; of several the smallest. */
export function partAt(parts: readonly PartPatch[], x: number, y: number): PartPatch | undefined {
  const holds = parts.filter((part) => {
    const turn = (-part.turnDeg * Math.PI) / 180;
    const u = (x - part.x) * Math.cos(turn) - (y - part.y) * Math.sin(turn);
    const v = (x - part.x) * Math.sin(turn) + (y - part.y) * Math.cos(turn);
    return Math.abs(u) <= part.widthPx / 2 + 4 && Math.abs(v) <= part.heightPx / 2 + 4;
  });
  return holds.sort((a, b) => a.widthPx * a.heightPx - b.widthPx * b.heightPx)[0];
}
