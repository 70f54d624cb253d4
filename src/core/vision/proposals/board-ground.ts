import type { Patch } from '../colour/white-balance.ts';
import { gaussianBlur } from '../image/blur.ts';
import type { Picture } from '../image/picture.ts';
import { planeOf, type Plane } from '../image/plane.ts';

/** The bare board under the parts, and how each pixel differs from it. */
export interface Ground {
  /** Brightness less that of the bare board beside it, −255..255. */
  readonly grey: Plane;
  readonly yellowBlue: Plane;
  readonly redGreen: Plane;
  /** All three as one distance, 0 where the mask is bare. */
  readonly distance: Plane;
}

/** Width of a bin of the histogram, grey. */
const BIN = 12;
/** A pixel this far from the commonest colour counts e⁻¹ when the ground beside it is averaged. */
const NEAR = 28;
/** Colour shifts are smaller than shifts of brightness, and say more. */
const COLOUR_WEIGHT = 1.6;

/**
 * The board's commonest colour (the solder mask) is taken for its ground. How light slopes over it is followed by a mean over the
 * pixels that look like it, weighted by how near they are in place (`reachPx`) and in colour.
 */
export function groundOf({ grey, yellowBlue, redGreen }: Picture, board: Patch, reachPx: number): Ground {
  const planes = [grey, yellowBlue, redGreen] as const;
  const common = commonest(planes, board);
  const weight = weightsNear(planes, common, board);
  const spread = gaussianBlur(weight, reachPx);
  const [g, yb, rg] = planes.map((plane, k) => lessGround(plane, weight, spread, common[k]!, reachPx)) as [Plane, Plane, Plane];
  const distance = planeOf(grey.width, grey.height);
  for (let i = 0; i < distance.data.length; i++)
    distance.data[i] = Math.hypot(g.data[i]!, COLOUR_WEIGHT * yb.data[i]!, COLOUR_WEIGHT * rg.data[i]!);
  return { grey: g, yellowBlue: yb, redGreen: rg, distance };
}

/** The middle of the fullest bin of colour, refined by a mean of what lies near it. */
function commonest(planes: readonly [Plane, Plane, Plane], board: Patch): [number, number, number] {
  const counts = new Map<number, number>();
  const bin = (value: number): number => Math.floor(value / BIN) + 32;
  let best = 0;
  let fullest = -1;
  eachIn(planes[0], board, (i) => {
    const key = bin(planes[0].data[i]!) * 4096 + bin(planes[1].data[i]!) * 64 + bin(planes[2].data[i]!);
    const count = (counts.get(key) ?? 0) + 1;
    counts.set(key, count);
    if (count > best) [best, fullest] = [count, key];
  });
  const middle = [Math.floor(fullest / 4096), Math.floor(fullest / 64) % 64, fullest % 64].map((b) => (b - 32 + 0.5) * BIN);
  const sums = [0, 0, 0];
  let near = 0;
  eachIn(planes[0], board, (i) => {
    if (planes.some((plane, k) => Math.abs(plane.data[i]! - middle[k]!) > BIN)) return;
    near++;
    planes.forEach((plane, k) => (sums[k]! += plane.data[i]!));
  });
  return sums.map((sum, k) => (near > 0 ? sum / near : middle[k]!)) as [number, number, number];
}

function weightsNear(planes: readonly [Plane, Plane, Plane], common: readonly number[], board: Patch): Plane {
  const { width, height } = planes[0];
  const weight = planeOf(width, height, 1e-6);
  eachIn(weight, board, (i) => {
    let d2 = 0;
    for (let k = 0; k < 3; k++) d2 += (planes[k]!.data[i]! - common[k]!) ** 2 * (k === 0 ? 1 : COLOUR_WEIGHT ** 2);
    weight.data[i] = Math.exp(-d2 / (NEAR * NEAR)) + 1e-6;
  });
  return weight;
}

function lessGround(plane: Plane, weight: Plane, spread: Plane, common: number, reachPx: number): Plane {
  const { width, height } = plane;
  const weighted = planeOf(width, height);
  for (let i = 0; i < weighted.data.length; i++) weighted.data[i] = weight.data[i]! * (plane.data[i]! - common);
  const sums = gaussianBlur(weighted, reachPx);
  const out = planeOf(width, height);
  for (let i = 0; i < out.data.length; i++) out.data[i] = plane.data[i]! - common - sums.data[i]! / Math.max(1e-6, spread.data[i]!);
  return out;
}

/** Every pixel of a box, by its index. */
function eachIn({ width, height }: { width: number; height: number }, box: Patch, look: (i: number) => void): void {
  const [x0, x1] = [Math.max(0, Math.floor(box.left)), Math.min(width, Math.ceil(box.right))];
  const [y0, y1] = [Math.max(0, Math.floor(box.top)), Math.min(height, Math.ceil(box.bottom))];
  for (let y = y0; y < y1; y++) for (let x = x0; x < x1; x++) look(y * width + x);
}
