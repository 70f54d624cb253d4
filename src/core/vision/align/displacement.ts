import { planeOf, type Plane } from '../image/plane.ts';
import { valueAt } from '../image/resample.ts';

/**
 * A smooth displacement in px, kept on a grid of nodes `step` px apart (node (0,0) at pixel (0,0)): what lies at p in the reference lies at p + d(p)
 * in the other picture.
 */
export interface Displacement {
  readonly step: number;
  readonly dx: Plane;
  readonly dy: Plane;
}

/** No displacement, for a picture of this size. */
export function noDisplacement(width: number, height: number, step: number): Displacement {
  const cols = Math.ceil((width - 1) / step) + 1;
  const rows = Math.ceil((height - 1) / step) + 1;
  return { step, dx: planeOf(cols, rows), dy: planeOf(cols, rows) };
}

/** The same displacement for a picture of `factor` times the size, on a grid of its own. */
export function rescaledDisplacement(field: Displacement, factor: number, width: number, height: number): Displacement {
  const out = noDisplacement(width, height, field.step);
  for (let r = 0, i = 0; r < out.dx.height; r++) {
    for (let c = 0; c < out.dx.width; c++, i++) {
      out.dx.data[i] = factor * valueAt(field.dx, c / factor, r / factor);
      out.dy.data[i] = factor * valueAt(field.dy, c / factor, r / factor);
    }
  }
  return out;
}

/** `source` seen in the frame of the reference: out(p) = source(p + d(p)), bilinear, with border values outside. */
export function warpedBy(source: Plane, field: Displacement, width: number, height: number): Plane {
  const out = planeOf(width, height);
  const xs = new Float32Array(width);
  const ys = new Float32Array(width);
  for (let y = 0, i = 0; y < height; y++) {
    gridRow(field.dx, y / field.step, field.step, xs);
    gridRow(field.dy, y / field.step, field.step, ys);
    for (let x = 0; x < width; x++, i++) out.data[i] = valueAt(source, x + xs[x]!, y + ys[x]!);
  }
  return out;
}

/** One picture row of a grid plane with nodes `step` px apart, at row `gy` of the grid, interpolated bilinearly into `out`. */
export function gridRow(grid: Plane, gy: number, step: number, out: Float32Array): void {
  const y0 = Math.min(grid.height - 1, Math.floor(gy));
  const y1 = Math.min(grid.height - 1, y0 + 1);
  const fy = gy - y0;
  const at = (c: number): number => {
    const top = grid.data[y0 * grid.width + c]!;
    return top + fy * (grid.data[y1 * grid.width + c]! - top);
  };
  for (let c = 0; c < grid.width; c++) {
    const from = at(c);
    const slope = (at(Math.min(grid.width - 1, c + 1)) - from) / step;
    for (let k = 0, x = c * step; k < step && x < out.length; k++, x++) out[x] = from + slope * k;
  }
}
