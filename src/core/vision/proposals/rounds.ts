import type { Patch } from '../colour/white-balance.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { boxBlur } from '../image/blur.ts';

/** A disc or a ring edge in the working picture, px. */
export interface Round {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  /** Share of its edge that is seen, 0..1. */
  readonly seen: number;
  /** Whether it is darker inside than outside. */
  readonly dark: boolean;
}

const RADII_MM = { least: 0.4, most: 2.4, step: 0.1 };
/** Steepness from which a pixel is an edge, grey per px. */
const EDGE = 9;
/** Share of the edge that must be seen. */
const LEAST_SEEN = 0.7;
/** Places that are kept at most. */
const MOST = 80;

/**
 * Round edges by voting: each edge pixel votes for the two middles one radius away from it along its gradient, those of bright and of dark discs apart
 * (D. Ballard, Pattern Recognition 13 (1981); direction-limited circles). The best of each place is kept.
 */
export function roundsOf(grey: Plane, board: Patch, perMm: number): Round[] {
  const edges = edgesOf(grey, board);
  const found: Round[] = [];
  for (let radiusMm = RADII_MM.least; radiusMm <= RADII_MM.most; radiusMm += RADII_MM.step)
    for (const dark of [false, true]) found.push(...peaksOf(votesFor(edges, grey, radiusMm * perMm, dark), radiusMm * perMm, dark));
  found.sort((a, b) => b.seen - a.seen);
  const kept: Round[] = [];
  for (const round of found)
    if (
      kept.length < MOST &&
      !kept.some(
        ({ x, y, radius }) =>
          Math.hypot(x - round.x, y - round.y) < 0.5 * Math.max(radius, round.radius) && Math.abs(radius - round.radius) < 0.5 * radius,
      )
    )
      kept.push(round);
  return kept;
}

/** Edge pixels: place and direction to the bright side, in steps of one px. */
interface Edges {
  readonly x: number[];
  readonly y: number[];
  readonly ux: number[];
  readonly uy: number[];
}

function edgesOf({ width, height, data }: Plane, { left, top, right, bottom }: Patch): Edges {
  const edges: Edges = { x: [], y: [], ux: [], uy: [] };
  for (let y = Math.max(1, Math.floor(top)); y < Math.min(height - 1, bottom); y++)
    for (let x = Math.max(1, Math.floor(left)); x < Math.min(width - 1, right); x++) {
      const i = y * width + x;
      const [gx, gy] = [(data[i + 1]! - data[i - 1]!) / 2, (data[i + width]! - data[i - width]!) / 2];
      const m = Math.hypot(gx, gy);
      if (m < EDGE) continue;
      edges.x.push(x);
      edges.y.push(y);
      edges.ux.push(gx / m);
      edges.uy.push(gy / m);
    }
  return edges;
}

/** Votes for middles, smoothed over 3 × 3 px, as shares of the circumference. */
function votesFor({ x, y, ux, uy }: Edges, { width, height }: Plane, radius: number, dark: boolean): Plane {
  const votes = planeOf(width, height);
  const step = dark ? -radius : radius;
  for (let k = 0; k < x.length; k++) {
    const cx = Math.round(x[k]! + step * ux[k]!);
    const cy = Math.round(y[k]! + step * uy[k]!);
    if (cx >= 0 && cy >= 0 && cx < width && cy < height) votes.data[cy * width + cx]!++;
  }
  const spread = boxBlur(votes, 1);
  const whole = 9 / (2 * Math.PI * radius);
  for (let i = 0; i < spread.data.length; i++) spread.data[i]! *= whole;
  return spread;
}

function peaksOf({ width, height, data }: Plane, radius: number, dark: boolean): Round[] {
  const found: Round[] = [];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      const seen = data[i]!;
      if (seen < LEAST_SEEN || seen < data[i - 1]! || seen < data[i + 1]! || seen < data[i - width]! || seen < data[i + width]!) continue;
      found.push({ x, y, radius, seen: Math.min(1, seen), dark });
    }
  return found;
}
