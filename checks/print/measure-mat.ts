import type { Mat, MatShape } from '../../src/core/teardown/index.ts';
import type { Raster } from './raster.ts';

/** Darker than this counts as ink. */
const INK = 128;

export interface MatError {
  /** Largest difference between a distance on the picture and the true one, mm. */
  readonly mm: number;
  readonly distances: number;
}

/**
 * How true a printed mat is: the rulers from their first tick to their last against 100 mm, and every distance between two
 * places of a page against the layout. Lines are found on the picture itself, by where their ink is.
 */
export function measureMat(mat: Extract<Mat, { ok: true }>, rasters: readonly Raster[], pxPerMm: number): MatError {
  let [mm, distances] = [0, 0];
  const note = (measured: number, truth: number): void => {
    mm = Math.max(mm, Math.abs(measured - truth));
    distances++;
  };
  mat.pages.forEach(({ shapes }, i) => {
    const raster = rasters[i]!;
    note(raster.width / pxPerMm, mat.widthMm);
    note(raster.height / pxPerMm, mat.heightMm);
    for (const shape of shapes) if (shape.kind === 'line' && shape.what === 'ruler') note(rulerLength(raster, shape, pxPerMm), 100);
    const rings = shapes.filter((shape) => shape.kind === 'circle' && shape.what === 'place') as Extract<MatShape, { kind: 'circle' }>[];
    const found = rings.map((ring) => ringCentre(raster, ring, pxPerMm));
    rings.forEach((a, j) =>
      rings.slice(j + 1).forEach((b, k) => {
        const [p, q] = [found[j]!, found[j + 1 + k]!];
        note(Math.hypot(p[0] - q[0], p[1] - q[1]), Math.hypot(a.x - b.x, a.y - b.y));
      }),
    );
  });
  return { mm, distances };
}

const inkAt = ({ grey, width, height }: Raster, x: number, y: number): boolean =>
  x >= 0 && y >= 0 && x < width && y < height && grey[y * width + x]! < INK;

/** From the middle of the first long tick to that of the last, on a line beside the ruler that crosses only the eleven long ones. */
function rulerLength(raster: Raster, ruler: Extract<MatShape, { kind: 'line' }>, pxPerMm: number): number {
  for (let besideMm = 2; besideMm <= 5; besideMm += 0.1) {
    const marks = marksBeside(raster, ruler, besideMm, pxPerMm);
    if (marks.length === 11) return (marks[10]! - marks[0]!) / pxPerMm;
  }
  throw new Error('no line beside a ruler crosses eleven ticks');
}

/** The middles of the ink on a line along the ruler, so far from it, px. */
function marksBeside(raster: Raster, ruler: Extract<MatShape, { kind: 'line' }>, besideMm: number, pxPerMm: number): number[] {
  const across = ruler.y1 === ruler.y2;
  const from = across ? ruler.x1 : ruler.y1;
  const beside = Math.round(((across ? ruler.y1 : ruler.x1) - besideMm) * pxPerMm);
  const marks: number[] = [];
  let run: number[] = [];
  for (let i = Math.round((from - 3) * pxPerMm); i <= (from + 103) * pxPerMm; i++) {
    if (across ? inkAt(raster, i, beside) : inkAt(raster, beside, i)) run.push(i + 0.5);
    else if (run.length > 0) {
      marks.push((run[0]! + run.at(-1)!) / 2);
      run = [];
    }
  }
  return marks;
}

/** The middle between the ink to the left and right, and above and below, seen from inside the ring; mm. */
function ringCentre(raster: Raster, ring: Extract<MatShape, { kind: 'circle' }>, pxPerMm: number): [number, number] {
  const [x, y] = [Math.round(ring.x * pxPerMm), Math.round(ring.y * pxPerMm)];
  const reach = (dx: number, dy: number): number => {
    for (let step = 1; step < 2 * ring.r * pxPerMm; step++) if (inkAt(raster, x + dx * step, y + dy * step)) return step;
    throw new Error(`no ring around ${ring.x}, ${ring.y} mm`);
  };
  return [(x + 0.5 + (reach(1, 0) - reach(-1, 0)) / 2) / pxPerMm, (y + 0.5 + (reach(0, 1) - reach(0, -1)) / 2) / pxPerMm];
}
