import type { Pair } from './pair-kernels.ts';
import { rowChances, type ReadingWeights } from './reading-belief.ts';

/** A fault so likely alone may hide a second one. */
const LIKELY = 0.25;

/**
 * Each likely fault with every other one: what may be there beside it, though nothing tells of it yet. Without them a belief that has found one fault sees no
 * reason to read on. Pairs that are thought of already are left out.
 */
export function secondFaults(alone: ReadingWeights, known: readonly Pair[]): Pair[] {
  const chances = rowChances(alone);
  const seen = new Set(known.map(([a, b]) => a * chances.length + b));
  const pairs: Pair[] = [];
  for (let a = 1; a < chances.length; a++) {
    if (chances[a]! < LIKELY) continue;
    for (let b = 1; b < chances.length; b++) {
      const key = Math.min(a, b) * chances.length + Math.max(a, b);
      if (a === b || seen.has(key)) continue;
      seen.add(key);
      pairs.push(a < b ? [a, b] : [b, a]);
    }
  }
  return pairs;
}
