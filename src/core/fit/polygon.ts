import type { Point } from './pattern.ts';

/** A convex polygon, its corners against the clock. */
export type Piece = readonly Point[];

/** Twice the signed area of a triangle; above zero when a, b, c go against the clock. */
const cross = (a: Point, b: Point, c: Point): number => (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);

/** Signed area by the shoelace formula; above zero for corners against the clock. */
export function signedArea(ring: readonly Point[]): number {
  let twice = 0;
  for (let i = 0; i < ring.length; i++) {
    const [x, y] = ring[i]!;
    const [nx, ny] = ring[(i + 1) % ring.length]!;
    twice += x * ny - nx * y;
  }
  return twice / 2;
}

const SMALLEST_MM2 = 1e-9;

/** The part of a convex polygon on the left of the line from a to b. */
function leftOf(piece: Piece, a: Point, b: Point): Piece {
  const kept: Point[] = [];
  for (let i = 0; i < piece.length; i++) {
    const here = piece[i]!;
    const next = piece[(i + 1) % piece.length]!;
    const [atHere, atNext] = [cross(a, b, here), cross(a, b, next)];
    if (atHere >= 0) kept.push(here);
    if (atHere >= 0 !== atNext >= 0) {
      const share = atHere / (atHere - atNext);
      kept.push([here[0] + share * (next[0] - here[0]), here[1] + share * (next[1] - here[1])]);
    }
  }
  return kept;
}

/** What two convex polygons share (Sutherland and Hodgman 1974); empty when they only touch. */
export function intersection(subject: Piece, clip: Piece): Piece {
  let piece = subject;
  for (let i = 0; i < clip.length && piece.length > 0; i++) piece = leftOf(piece, clip[i]!, clip[(i + 1) % clip.length]!);
  return piece.length >= 3 && signedArea(piece) > SMALLEST_MM2 ? piece : [];
}

/** What of `piece` lies outside `hole`, as convex pieces that do not overlap: one cut off along each edge of the hole. */
function outside(piece: Piece, hole: Piece): Piece[] {
  if (intersection(piece, hole).length === 0) return [piece];
  const cut: Piece[] = [];
  let rest = piece;
  for (let i = 0; i < hole.length && rest.length > 0; i++) {
    const [a, b] = [hole[i]!, hole[(i + 1) % hole.length]!];
    const off = leftOf(rest, b, a);
    if (off.length >= 3 && signedArea(off) > SMALLEST_MM2) cut.push(off);
    rest = leftOf(rest, a, b);
  }
  return cut;
}

/** One cover without overlaps from several that have none in themselves; the largest first, so that what lies within it leaves nothing. */
export function unionOf(covers: readonly (readonly Piece[])[]): Piece[] {
  const done: Piece[] = [];
  for (const cover of [...covers].sort((a, b) => areaOf(b) - areaOf(a))) {
    const earlier = done.map((piece) => ({ piece, box: boxOf([piece]) }));
    for (const piece of cover) done.push(...beyond(piece, earlier));
  }
  return done;
}

function beyond(piece: Piece, earlier: readonly { readonly piece: Piece; readonly box: Box }[]): Piece[] {
  let left: Piece[] = [piece];
  for (const each of earlier) {
    if (left.length === 0) break;
    if (boxesMeet(boxOf(left), each.box, 0)) left = left.flatMap((part) => outside(part, each.piece));
  }
  return left;
}

export interface Box {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
}

export function boxOf(pieces: readonly Piece[]): Box {
  let [x1, y1, x2, y2] = [Infinity, Infinity, -Infinity, -Infinity];
  for (const piece of pieces)
    for (const [x, y] of piece) {
      if (x < x1) x1 = x;
      if (y < y1) y1 = y;
      if (x > x2) x2 = x;
      if (y > y2) y2 = y;
    }
  return { x1, y1, x2, y2 };
}

export const boxesMeet = (a: Box, b: Box, slack: number): boolean =>
  a.x1 <= b.x2 + slack && b.x1 <= a.x2 + slack && a.y1 <= b.y2 + slack && b.y1 <= a.y2 + slack;

export const areaOf = (pieces: readonly Piece[]): number => pieces.reduce((sum, piece) => sum + signedArea(piece), 0);

/** Shared area of two covers, each without overlaps in itself, mm². */
export function sharedArea(a: readonly Piece[], b: readonly Piece[]): number {
  let sum = 0;
  for (const one of a) for (const other of b) sum += areaOf([intersection(one, other)]);
  return sum;
}

/** Whether two convex polygons come as near as `slack`: no edge of either separates them by more. */
export function touches(a: Piece, b: Piece, slack: number): boolean {
  return !separates(a, b, slack) && !separates(b, a, slack);
}

function separates(a: Piece, b: Piece, slack: number): boolean {
  return a.some((from, i) => {
    const to = a[(i + 1) % a.length]!;
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    return length > 0 && b.every((point) => cross(from, to, point) < -slack * length);
  });
}

/** A simple polygon as triangles (ear clipping, Meisters 1975); corners in either direction. A ring that crosses itself gives what was cut until then. */
export function triangles(ring: readonly Point[]): Piece[] {
  const left = signedArea(ring) < 0 ? ring.toReversed() : [...ring];
  const done: Piece[] = [];
  for (let i = 0, misses = 0; left.length > 3 && misses < left.length;) {
    const n = left.length;
    const [a, b, c] = [left[i % n]!, left[(i + 1) % n]!, left[(i + 2) % n]!];
    const isEar = cross(a, b, c) > 0 && !left.some((p) => p !== a && p !== b && p !== c && inTriangle(p, a, b, c));
    const isFlat = Math.abs(cross(a, b, c)) < SMALLEST_MM2;
    if (isEar) done.push([a, b, c]);
    if (isEar || isFlat) left.splice((i + 1) % n, 1);
    misses = isEar || isFlat ? 0 : misses + 1;
    i = isEar || isFlat ? 0 : i + 1;
  }
  return left.length === 3 && signedArea(left) > SMALLEST_MM2 ? [...done, left] : done;
}

const inTriangle = (p: Point, a: Point, b: Point, c: Point): boolean => cross(a, b, p) >= 0 && cross(b, c, p) >= 0 && cross(c, a, p) >= 0;
