import { planeOf, type Plane } from '../image/plane.ts';
import type { Ground } from './board-ground.ts';
import type { Rectangle } from './rectangles.ts';
import { meanIn, sumsOf, type Sums } from './sums.ts';

/** What rectangles are judged by: sums of the planes, made once a picture. */
export interface Evidence {
  readonly perMm: number;
  readonly grey: Sums;
  readonly yellowBlue: Sums;
  readonly redGreen: Sums;
  readonly distance: Sums;
  readonly squares: Sums;
  readonly stands: Sums;
  readonly white: Sums;
  readonly dark: Sums;
  /** Steps of brightness along x and along y. */
  readonly across: Sums;
  readonly down: Sums;
}

/** From this distance on a pixel stands out from the bare board. */
const STANDS_OUT = 34;

export function evidenceOf(ground: Ground, perMm: number): Evidence {
  const { grey, yellowBlue, redGreen, distance } = ground;
  const each = (of: (i: number) => number): Sums => {
    const plane = planeOf(grey.width, grey.height);
    for (let i = 0; i < plane.data.length; i++) plane.data[i] = of(i);
    return sumsOf(plane);
  };
  const colour = (i: number): number => Math.hypot(yellowBlue.data[i]!, redGreen.data[i]!);
  return {
    perMm,
    grey: sumsOf(grey),
    yellowBlue: sumsOf(yellowBlue),
    redGreen: sumsOf(redGreen),
    distance: sumsOf(distance),
    squares: each((i) => distance.data[i]! ** 2),
    stands: each((i) => Number(distance.data[i]! > STANDS_OUT)),
    white: each((i) => Number(grey.data[i]! > 110 && colour(i) < 40)),
    dark: each((i) => Number(grey.data[i]! < -12)),
    across: sumsOf(steps(grey, 1, 0)),
    down: sumsOf(steps(grey, 0, 1)),
  };
}

function steps({ width, height, data }: Plane, dx: number, dy: number): Plane {
  const out = planeOf(width, height);
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++)
      out.data[i] = Math.min(80, Math.abs(data[i + dx + dy * width]! - data[i - dx - dy * width]!));
  return out;
}

/** Squares along and across a rectangle in which it is looked at. */
const GRID = { along: 8, across: 4 };
/** How far around a rectangle is looked, mm. */
const RING_MM = 0.35;

/** What is known of a rectangle, as numbers for the ranker; the longer side counts as its length, so that turning by a quarter changes nothing but the end that comes first. */
export function featuresOf(rectangle: Rectangle, evidence: Evidence): Float32Array {
  const { left, top, right, bottom, from, pins, round } = rectangle;
  const { perMm } = evidence;
  const [w, h] = [right - left, bottom - top];
  const lies = w >= h;
  const [long, short] = lies ? [w, h] : [h, w];
  const inside = (sums: Sums): number => meanIn(sums, left, top, right, bottom);
  const ring = RING_MM * perMm;
  const around = (sums: Sums): number => {
    const area = (w + 2 * ring) * (h + 2 * ring);
    return (meanIn(sums, left - ring, top - ring, right + ring, bottom + ring) * area - inside(sums) * w * h) / (area - w * h);
  };
  const distance = inside(evidence.distance);
  const spread = Math.sqrt(Math.max(0, inside(evidence.squares) - distance ** 2));
  const grids = [evidence.grey, evidence.yellowBlue, evidence.redGreen].map((sums) => gridOf(sums, rectangle, lies));
  const sides = sideSteps(rectangle, evidence, lies);
  return Float32Array.from([
    long / perMm,
    short / perMm,
    long / short,
    distance,
    around(evidence.distance),
    spread,
    inside(evidence.stands),
    around(evidence.stands),
    inside(evidence.white),
    around(evidence.white),
    inside(evidence.dark),
    inside(lies ? evidence.across : evidence.down),
    inside(lies ? evidence.down : evidence.across),
    ...sides,
    ...mirrored(grids[0]!),
    ...partsOf(grids),
    Number(from === 'pair'),
    pins,
    round?.seen ?? 0,
    Number(round?.dark ?? false),
  ]);
}

/** Means in the squares of the grid, the longer side first. */
function gridOf(sums: Sums, { left, top, right, bottom }: Rectangle, lies: boolean): number[] {
  const [cols, rows] = lies ? [GRID.along, GRID.across] : [GRID.across, GRID.along];
  const [cw, ch] = [(right - left) / cols, (bottom - top) / rows];
  return Array.from({ length: GRID.along * GRID.across }, (_, k) => {
    const [along, across] = [k % GRID.along, Math.floor(k / GRID.along)];
    const [col, row] = lies ? [along, across] : [across, along];
    return meanIn(sums, left + col * cw, top + row * ch, left + (col + 1) * cw, top + (row + 1) * ch);
  });
}

/** Steps of brightness along each side, weakest and mean, ends and flanks apart. */
function sideSteps({ left, top, right, bottom }: Rectangle, { across, down }: Evidence, lies: boolean): number[] {
  const upright = [left, right].map((x) => meanIn(across, x - 1, top, x + 1, bottom));
  const level = [top, bottom].map((y) => meanIn(down, left, y - 1, right, y + 1));
  const [ends, flanks] = lies ? [upright, level] : [level, upright];
  return [Math.min(...ends), Math.min(...flanks), (ends[0]! + ends[1]!) / 2, (flanks[0]! + flanks[1]!) / 2];
}

/** How alike a rectangle is to itself turned end for end, flank for flank, and by half a turn (correlation, −1..1): parts are, letters are not. */
function mirrored(grid: readonly number[]): number[] {
  const { along, across } = GRID;
  const at = (x: number, y: number): number => grid[y * along + x]!;
  const turned = (of: (x: number, y: number) => number): number[] => grid.map((_, k) => of(k % along, Math.floor(k / along)));
  return [
    correlation(
      grid,
      turned((x, y) => at(along - 1 - x, y)),
    ),
    correlation(
      grid,
      turned((x, y) => at(x, across - 1 - y)),
    ),
    correlation(
      grid,
      turned((x, y) => at(along - 1 - x, across - 1 - y)),
    ),
  ];
}

function correlation(a: readonly number[], b: readonly number[]): number {
  const mean = a.reduce((sum, v) => sum + v, 0) / a.length;
  let [ab, aa] = [0, 0];
  a.forEach((v, i) => {
    ab += (v - mean) * (b[i]! - mean);
    aa += (v - mean) ** 2;
  });
  return aa > 0 ? ab / aa : 1;
}

/** Ends, middle and rim of a rectangle: means of brightness and colours, and what differs between them. */
function partsOf(grids: readonly (readonly number[])[]): number[] {
  const mean = (grid: readonly number[], of: (x: number, y: number) => boolean): number => {
    const values = grid.filter((_, k) => of(k % GRID.along, Math.floor(k / GRID.along)));
    return values.reduce((sum, v) => sum + v, 0) / values.length;
  };
  const grey = grids[0]!;
  const first = mean(grey, (x) => x < 2);
  const last = mean(grey, (x) => x >= GRID.along - 2);
  const middle = (grid: readonly number[]): number => mean(grid, (x, y) => x >= 3 && x < GRID.along - 3 && y >= 1 && y < GRID.across - 1);
  const corners = mean(grey, (x, y) => (x === 0 || x === GRID.along - 1) && (y === 0 || y === GRID.across - 1));
  const flanks = mean(grey, (x, y) => x >= 2 && x < GRID.along - 2 && (y === 0 || y === GRID.across - 1));
  return [
    (first + last) / 2,
    Math.abs(first - last),
    middle(grey),
    corners,
    flanks,
    (first + last) / 2 - middle(grey),
    ...grids.slice(1).flatMap((grid) => [mean(grid, (x) => x < 2 || x >= GRID.along - 2), middle(grid)]),
    Math.min(...grey),
    Math.max(...grey),
  ];
}
