import { planeOf, type Plane } from '../image/plane.ts';

/** Directions that are told apart, over the full turn: dark-to-bright and bright-to-dark are two. */
export const DIRECTIONS = 8;

/** What edges each square of `size` px holds: `DIRECTIONS` values a cell, interleaved, each about 0..1. */
export interface Cells {
  readonly size: number;
  readonly cols: number;
  readonly rows: number;
  readonly data: Float32Array;
}

/** Gradient, in grey per px, at which an edge counts half: above it contrast matters little, below it noise counts little. */
const HALF_GRADIENT = 8;

/**
 * Edges by direction in cells of `size` px, each edge pixel shared between its two nearest directions and its four nearest cells (bilinear), its strength
 * softened to m²/(m² + h²). After the cells of N. Dalal, B. Triggs, CVPR 2005, §6, without their normalisation over blocks: the light is matched before.
 */
export function orientationCells({ width, height, data }: Plane, size: number): Cells {
  const cols = Math.ceil(width / size);
  const rows = Math.ceil(height / size);
  const cells = { size, cols, rows, data: new Float32Array(cols * rows * DIRECTIONS) };
  const turn = DIRECTIONS / (2 * Math.PI);
  for (let y = 1; y < height - 1; y++) {
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      const gx = (data[i + 1]! - data[i - 1]!) / 2;
      const gy = (data[i + width]! - data[i - width]!) / 2;
      const m2 = gx * gx + gy * gy;
      if (m2 < 4) continue;
      const strength = m2 / (m2 + HALF_GRADIENT * HALF_GRADIENT) / size;
      share(cells, x / size - 0.5, y / size - 0.5, (Math.atan2(gy, gx) + Math.PI) * turn, strength);
    }
  }
  return cells;
}

function share({ cols, rows, data }: Cells, cx: number, cy: number, direction: number, strength: number): void {
  const d0 = Math.floor(direction) % DIRECTIONS;
  const fd = direction - Math.floor(direction);
  const x0 = Math.floor(cx);
  const y0 = Math.floor(cy);
  for (let dy = 0; dy < 2; dy++) {
    const y = y0 + dy;
    if (y < 0 || y >= rows) continue;
    const wy = dy ? cy - y0 : 1 - cy + y0;
    for (let dx = 0; dx < 2; dx++) {
      const x = x0 + dx;
      if (x < 0 || x >= cols) continue;
      const w = strength * wy * (dx ? cx - x0 : 1 - cx + x0);
      const at = (y * cols + x) * DIRECTIONS;
      data[at + d0]! += w * (1 - fd);
      data[at + ((d0 + 1) % DIRECTIONS)]! += w * fd;
    }
  }
}

/**
 * What each cell of `seen` holds that no cell of any of the `elsewhere` within one cell of it holds, summed over directions: content that is merely displaced
 * explains a cell.
 */
export function unexplained(seen: Cells, elsewhere: readonly Cells[]): Plane {
  const out = planeOf(seen.cols, seen.rows);
  for (let y = 0, c = 0; y < seen.rows; y++) {
    for (let x = 0; x < seen.cols; x++, c++) {
      let least = Infinity;
      for (const other of elsewhere)
        for (let ny = Math.max(0, y - 1); ny <= Math.min(seen.rows - 1, y + 1); ny++)
          for (let nx = Math.max(0, x - 1); nx <= Math.min(seen.cols - 1, x + 1); nx++)
            least = Math.min(least, lacking(seen.data, c * DIRECTIONS, other.data, (ny * seen.cols + nx) * DIRECTIONS));
      out.data[c] = least;
    }
  }
  return out;
}

function lacking(a: Float32Array, at: number, b: Float32Array, bt: number): number {
  let sum = 0;
  for (let d = 0; d < DIRECTIONS; d++) {
    const lack = a[at + d]! - b[bt + d]!;
    if (lack > 0) sum += lack;
  }
  return sum;
}
