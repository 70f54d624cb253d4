import { holeOf } from './pad-cover.ts';
import type { Pad, Pattern, Point } from './pattern.ts';
import { turnPoint } from './turn.ts';

/** A hole of a pattern, for a leg (plated) or a peg. */
export interface Hole {
  readonly name: string;
  readonly kind: 'leg' | 'peg';
  readonly at: Point;
  readonly wMm: number;
  readonly hMm: number;
}

/** A plated hole up to this size within a soldered pad of the same pin is a via, mm. Common practice, no source. */
const VIA_MM = 0.5;

/** Holes for legs and pegs; vias are none. */
export function holesOf({ pads }: Pattern): Hole[] {
  return pads.flatMap((pad): Hole[] => {
    const hole = holeOf(pad);
    return hole && !isVia(pad, pads) ? [{ name: pad.name, kind: pad.kind === 'peg' ? 'peg' : 'leg', ...hole }] : [];
  });
}

function isVia(pad: Pad, pads: readonly Pad[]): boolean {
  if (pad.kind !== 'through' || Math.max(pad.drill!.wMm, pad.drill!.hMm) > VIA_MM) return false;
  return pads.some(({ kind, name, xMm, yMm, wMm, hMm, turnDeg }) => {
    if (kind !== 'surface' || name !== pad.name) return false;
    const [x, y] = turnPoint([pad.xMm - xMm, pad.yMm - yMm], -turnDeg);
    return Math.abs(x) <= wMm / 2 && Math.abs(y) <= hMm / 2;
  });
}

/**
 * Pairs of near points, each point in at most one pair: in rounds every free point of `a` asks for the nearest free point of `b`, and the nearer one gets it.
 * Indices into a and b, in the order of a.
 */
export function nearestPairs(a: readonly Point[], b: readonly Point[]): [number, number][] {
  const pairs: [number, number][] = [];
  let freeA = a.map((_, i) => i);
  let freeB = b.map((_, j) => j);
  while (freeA.length > 0 && freeB.length > 0) {
    const wishes = freeA.map((i) => nearestTo(a[i]!, b, freeB, i)).sort((one, other) => one.far - other.far || one.i - other.i);
    const taken = new Set<number>();
    for (const { i, j } of wishes) {
      if (taken.has(j)) continue;
      taken.add(j);
      pairs.push([i, j]);
    }
    const paired = new Set(pairs.map(([i]) => i));
    freeA = freeA.filter((i) => !paired.has(i));
    freeB = freeB.filter((j) => !taken.has(j));
  }
  return pairs.sort(([x], [y]) => x - y);
}

function nearestTo([x, y]: Point, b: readonly Point[], free: readonly number[], i: number) {
  let [j, far] = [free[0]!, Infinity];
  for (const index of free) {
    const [bx, by] = b[index]!;
    const away = (bx - x) ** 2 + (by - y) ** 2;
    if (away < far) [j, far] = [index, away];
  }
  return { i, j, far };
}
