import { gaussianBlur } from '../image/blur.ts';
import { planeOf, sameSize, type Plane } from '../image/plane.ts';
import { halved } from '../image/resample.ts';
import { noDisplacement, rescaledDisplacement, warpedBy, type Displacement } from './displacement.ts';

/** How a displacement is sought. Sizes in px of the level at hand. */
export interface FlowOptions {
  /** Distance between nodes. */
  readonly step: number;
  /** Times the pictures are halved for the first, coarsest estimate. */
  readonly halvings: number;
  readonly rounds: number;
  /** Smoothness: standard deviation, in nodes, over which what edges say is shared. */
  readonly shareNodes: number;
  /** A grey difference above which a pixel is taken for a true difference and loses its say. */
  readonly robustGrey: number;
}

export const FLOW: FlowOptions = { step: 8, halvings: 2, rounds: 3, shareNodes: 3, robustGrey: 60 };

/**
 * The smooth displacement that lays `other` on `reference` where they nearly fit already (some 8 px and less). Each pixel says as much as it has edge
 * (structure tensor), across its edge only; what neighbouring nodes say is summed before solving, so flat regions follow their surroundings and one missing
 * part pulls nothing. Coarse to fine. Source: B. Lucas, T. Kanade, IJCAI 1981, eq. 9 in two dimensions, with weights; smoothing of the tensors after
 * G. Farnebäck, SCIA 2003, §4.
 */
export function smoothFlow(
  reference: Plane,
  other: Plane,
  options: FlowOptions = FLOW,
  start?: Displacement,
  shouldStop: () => boolean = () => false,
): Displacement {
  sameSize(reference, other);
  const pyramid = [{ reference, other }];
  for (let i = 0; i < options.halvings; i++) {
    const last = pyramid.at(-1)!;
    pyramid.push({ reference: halved(last.reference), other: halved(last.other) });
  }
  const top = pyramid.at(-1)!.reference;
  let field = start
    ? rescaledDisplacement(start, 2 ** -options.halvings, top.width, top.height)
    : noDisplacement(top.width, top.height, options.step);
  for (let level = options.halvings; level >= 0; level--) {
    const at = pyramid[level]!;
    if (level < options.halvings) field = rescaledDisplacement(field, 2, at.reference.width, at.reference.height);
    const smooth = { reference: gaussianBlur(at.reference, 1), other: gaussianBlur(at.other, 1) };
    for (let round = 0; round < options.rounds && !shouldStop(); round++) field = improved(smooth.reference, smooth.other, field, options);
  }
  return field;
}

/** Sums over the cell of each node, one plane each of A = Σ w g gᵀ and b = Σ w g e. */
interface Said {
  readonly xx: Plane;
  readonly xy: Plane;
  readonly yy: Plane;
  readonly bx: Plane;
  readonly by: Plane;
}

function improved(reference: Plane, other: Plane, field: Displacement, options: FlowOptions): Displacement {
  const laid = warpedBy(other, field, reference.width, reference.height);
  const said = whatEdgesSay(reference, laid, field, options.robustGrey);
  const share = (plane: Plane): Plane => gaussianBlur(plane, options.shareNodes);
  const [xx, xy, yy, bx, by] = [said.xx, said.xy, said.yy, said.bx, said.by].map(share) as [Plane, Plane, Plane, Plane, Plane];
  const next = { step: field.step, dx: planeOf(xx.width, xx.height), dy: planeOf(xx.width, xx.height) };
  const little = 4 * options.step ** 2;
  for (let i = 0; i < xx.data.length; i++) {
    const a = xx.data[i]! + little;
    const d = yy.data[i]! + little;
    const b = xy.data[i]!;
    const det = a * d - b * b;
    next.dx.data[i] = field.dx.data[i]! + within((d * bx.data[i]! - b * by.data[i]!) / det);
    next.dy.data[i] = field.dy.data[i]! + within((a * by.data[i]! - b * bx.data[i]!) / det);
  }
  return { step: field.step, dx: gaussianBlur(next.dx, 1), dy: gaussianBlur(next.dy, 1) };
}

/** One round moves by a pixel and a half at most: beyond it the linear law does not hold. */
const within = (move: number): number => (move > 1.5 ? 1.5 : move < -1.5 ? -1.5 : move);

function whatEdgesSay(reference: Plane, laid: Plane, field: Displacement, robust: number): Said {
  const { width, height } = reference;
  const { step, dx: grid } = field;
  const said = {
    xx: planeOf(grid.width, grid.height),
    xy: planeOf(grid.width, grid.height),
    yy: planeOf(grid.width, grid.height),
    bx: planeOf(grid.width, grid.height),
    by: planeOf(grid.width, grid.height),
  };
  const a = reference.data;
  const b = laid.data;
  const limit = 1 / (robust * robust);
  for (let y = 1; y < height - 1; y++) {
    const row = Math.min(grid.height - 1, Math.round(y / step)) * grid.width;
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      const gx = (a[i + 1]! - a[i - 1]! + b[i + 1]! - b[i - 1]!) / 4;
      const gy = (a[i + width]! - a[i - width]! + b[i + width]! - b[i - width]!) / 4;
      if (gx * gx + gy * gy < 4) continue;
      const e = a[i]! - b[i]!;
      const weight = 1 / (1 + e * e * limit) ** 2;
      const cell = row + Math.min(grid.width - 1, ((x + step / 2) / step) | 0);
      said.xx.data[cell]! += weight * gx * gx;
      said.xy.data[cell]! += weight * gx * gy;
      said.yy.data[cell]! += weight * gy * gy;
      said.bx.data[cell]! += weight * gx * e;
      said.by.data[cell]! += weight * gy * e;
    }
  }
  return said;
}
