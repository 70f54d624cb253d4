import type { Pad, Point } from './pattern.ts';
import { triangles, unionOf, type Piece } from './polygon.ts';
import { turner, turnPoint } from './turn.ts';

/** An arc is drawn in chords that lie at most this far inside it, mm: as fine as patterns are written. */
const CHORD_MM = 0.003;

/** Points on the first quarter of a circle of radius 1, both ends among them, for a circle of this radius. */
function arc(radius: number): Point[] {
  const steps = Math.ceil(Math.PI / 4 / Math.acos(Math.max(0, 1 - CHORD_MM / radius)));
  return Array.from({ length: steps + 1 }, (_, i) => turnPoint([1, 0], (90 * i) / steps));
}

/** The copper of a pad (of a peg the hole) in the frame of the pattern, as convex pieces that do not overlap. Arcs are chords. */
export function padCover(pad: Pad): Piece[] {
  const own = pad.shape === 'outline' ? unionOf(pad.rings.map(triangles)) : [roundedBox(pad.wMm, pad.hMm, cornerOf(pad))];
  const turn = turner(pad.turnDeg);
  return own.map((piece) =>
    piece.map((point): Point => {
      const [x, y] = turn(point);
      return [x + pad.xMm, y + pad.yMm];
    }),
  );
}

/** Middle of the hole of a pad, and the size of its hole along the axes of the pattern (exact for quarters); null without a hole. */
export function holeOf(pad: Pad): { readonly at: Point; readonly wMm: number; readonly hMm: number } | null {
  if (!pad.drill) return null;
  const box = roundedBox(pad.drill.wMm, pad.drill.hMm, Math.min(pad.drill.wMm, pad.drill.hMm) / 2).map((p) => turnPoint(p, pad.turnDeg));
  const [xs, ys] = [box.map(([x]) => x), box.map(([, y]) => y)];
  return {
    at: inPattern(pad, [pad.drill.dxMm, pad.drill.dyMm]),
    wMm: Math.max(...xs) - Math.min(...xs),
    hMm: Math.max(...ys) - Math.min(...ys),
  };
}

function cornerOf(pad: Pad): number {
  const most = Math.min(pad.wMm, pad.hMm) / 2;
  if (pad.shape === 'oval' || pad.shape === 'circle') return most;
  return pad.shape === 'round-rect' ? Math.min(most, pad.cornerMm) : 0;
}

function inPattern(pad: Pad, point: Point): Point {
  const [x, y] = turnPoint(point, pad.turnDeg);
  return [x + pad.xMm, y + pad.yMm];
}

/** A box about the origin with rounded corners, against the clock. */
function roundedBox(w: number, h: number, radius: number): Piece {
  const [x, y] = [w / 2 - radius, h / 2 - radius];
  const middles: readonly Point[] = [
    [x, y],
    [-x, y],
    [-x, -y],
    [x, -y],
  ];
  if (radius <= 0) return middles;
  const quarterArc = arc(radius);
  const corners = middles.flatMap(([mx, my], quarter) => {
    const turn = turner(90 * quarter);
    return quarterArc.map((point): Point => {
      const [ax, ay] = turn(point);
      return [mx + radius * ax, my + radius * ay];
    });
  });
  return corners.filter(([cx, cy], i) => {
    const [bx, by] = corners[(i + corners.length - 1) % corners.length]!;
    return Math.hypot(cx - bx, cy - by) > 1e-9;
  });
}
