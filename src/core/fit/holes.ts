import { holeOf } from './pad-cover.ts';
import type { Pattern, Point } from './pattern.ts';

/** A hole of a pattern, for a leg (plated) or a peg. */
export interface Hole {
  readonly name: string;
  readonly kind: 'leg' | 'peg';
  readonly at: Point;
  readonly wMm: number;
  readonly hMm: number;
}

export function holesOf(pattern: Pattern): Hole[] {
  return pattern.pads.flatMap((pad): Hole[] => {
    const hole = holeOf(pad);
    return hole ? [{ name: pad.name, kind: pad.kind === 'peg' ? 'peg' : 'leg', ...hole }] : [];
  });
}

/** Pairs of nearest points, each point in at most one pair: the nearest pair first. Indices into a and b. */
export function nearestPairs(a: readonly Point[], b: readonly Point[]): [number, number][] {
  const all = a.flatMap((p, i) => b.map((q, j) => ({ i, j, d: Math.hypot(p[0] - q[0], p[1] - q[1]) })));
  all.sort((one, other) => one.d - other.d || one.i - other.i || one.j - other.j);
  const [usedA, usedB] = [new Set<number>(), new Set<number>()];
  const pairs: [number, number][] = [];
  for (const { i, j } of all) {
    if (usedA.has(i) || usedB.has(j)) continue;
    usedA.add(i);
    usedB.add(j);
    pairs.push([i, j]);
  }
  return pairs.sort(([x], [y]) => x - y);
}
