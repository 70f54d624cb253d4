import type { Patch } from '../colour/white-balance.ts';
import { planeOf, type Plane } from '../image/plane.ts';
import { boxBlur } from '../image/blur.ts';
import { valueAt } from '../image/resample.ts';

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

const RADII_MM = { least: 0.5, most: 2.4, step: 0.1 };
/** Steepness from which a pixel is an edge, grey per px. */
const EDGE = 6;
/** Share of the votes that a whole circle gives, from which a place is looked at closer, and share of its edge that must then be seen. */
const LEAST_VOTES = 0.4;
const LEAST_SEEN = 0.9;
/** Steepness that the middlemost direction must show, grey per px. */
const STEP = 10;
/** Directions in which the edge is looked for. */
const DIRECTIONS = 32;
/** How far from its circle an edge may lie, mm. */
const OFF_MM = 0.15;

/**
 * Round edges by voting: each edge pixel votes for the two middles one radius away from it along its gradient, those of bright and of dark discs apart
 * (D. Ballard, Pattern Recognition 13 (1981), §3). Where votes gather, the edge is then looked for in all directions. Of rounds at one place the most whole is kept.
 */
export function roundsOf(grey: Plane, board: Patch, perMm: number): Round[] {
  const edges = edgesOf(grey, board);
  const found: (Round & { readonly votes: number })[] = [];
  for (let radiusMm = RADII_MM.least; radiusMm <= RADII_MM.most; radiusMm += RADII_MM.step)
    for (const dark of [false, true])
      for (const [x, y, votes] of peaksOf(votesFor(edges, grey, radiusMm * perMm, dark))) {
        const seen = edgeSeen(grey, x, y, radiusMm * perMm, dark, OFF_MM * perMm);
        if (seen >= LEAST_SEEN) found.push({ x, y, radius: radiusMm * perMm, seen, dark, votes });
      }
  found.sort((a, b) => b.seen - a.seen || b.votes - a.votes);
  const kept: Round[] = [];
  for (const round of found) if (!kept.some((other) => areOne(round, other))) kept.push(round);
  return kept;
}

const areOne = (a: Round, b: Round): boolean =>
  Math.hypot(a.x - b.x, a.y - b.y) < 0.5 * Math.max(a.radius, b.radius) && Math.abs(a.radius - b.radius) < 0.5 * b.radius;

/** The share of directions in which brightness steps the right way at about the radius, and at least half as much as in the middlemost direction. */
function edgeSeen(grey: Plane, x: number, y: number, radius: number, dark: boolean, off: number): number {
  const steps = Array.from(
    { length: DIRECTIONS },
    (_, k) => steepest(grey, x, y, (2 * Math.PI * k) / DIRECTIONS, radius, off) * (dark ? 1 : -1),
  );
  const middle = [...steps].sort((a, b) => a - b)[DIRECTIONS / 2]!;
  return middle < STEP ? 0 : steps.filter((step) => step >= middle / 2).length / DIRECTIONS;
}

/** The strongest step of brightness outwards in one direction, grey per px, above zero where it gets brighter. */
function steepest(grey: Plane, x: number, y: number, angle: number, radius: number, off: number): number {
  const [ux, uy] = [Math.cos(angle), Math.sin(angle)];
  let best = 0;
  for (let r = radius - off; r <= radius + off; r += 1) {
    const step = (valueAt(grey, x + (r + 1) * ux, y + (r + 1) * uy) - valueAt(grey, x + (r - 1) * ux, y + (r - 1) * uy)) / 2;
    if (Math.abs(step) > Math.abs(best)) best = step;
  }
  return best;
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

/** Where votes are most among their neighbours, and how many. */
function peaksOf({ width, height, data }: Plane): [x: number, y: number, votes: number][] {
  const found: [number, number, number][] = [];
  for (let y = 1; y < height - 1; y++)
    for (let x = 1, i = y * width + 1; x < width - 1; x++, i++) {
      const votes = data[i]!;
      if (votes < LEAST_VOTES || votes < data[i - 1]! || votes < data[i + 1]! || votes < data[i - width]! || votes < data[i + width]!)
        continue;
      found.push([x, y, votes]);
    }
  return found;
}
