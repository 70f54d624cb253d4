import type { Baseline } from './evidence.ts';
import type { ReadingFault } from './reading-dictionary.ts';

/** Faults that no check can tell apart; an empty id stands for "nothing is wrong". */
export interface FaultGroup {
  readonly faults: readonly string[];
  /** Whether a board with one of them measures and works like a healthy one. */
  readonly likeHealthy: boolean;
}

/** Draws in which two rows are compared. */
const COMPARED = 4;
/** Two circuits are told apart by a function when their chances to work differ by more than this. */
const WORKS_APART = 0.5;

/**
 * Groups of rows that are resistances between the same two nodes, of sizes that overlap, or whose expected readings lie, draw by draw, within the accuracy of the meter of each other at every point, and whose functions work alike. Each
 * row joins the first group whose likeliest member it is like. The index of the group of each row: row 0, the healthy board, is in group 0.
 */
export function groupOfRows(baseline: Baseline): Int32Array {
  const { kernels } = baseline;
  const { faults } = kernels.dictionary;
  const order = [...faults.keys()].sort((a, b) => faults[b]!.rate - faults[a]!.rate).map((fault) => fault + 1);
  const firsts = [0];
  const group = new Int32Array(kernels.rows);
  for (const row of order) {
    const found = firsts.findIndex((first) => isAlike(baseline, row, first));
    group[row] = found < 0 ? firsts.push(row) - 1 : found;
  }
  return group;
}

/** The same as names; only groups with faults. */
export function faultGroups(baseline: Baseline): FaultGroup[] {
  const group = groupOfRows(baseline);
  const { faults } = baseline.kernels.dictionary;
  const members = new Map<number, string[]>();
  faults.forEach(({ id }, i) => members.set(group[i + 1]!, [...(members.get(group[i + 1]!) ?? []), id]));
  return [...members].map(([index, ids]) => ({ faults: ids, likeHealthy: index === 0 }));
}

/** A shorted capacitor and a chip that shorts the same rail differ by their resistance alone, which tells little where either varies by more. */
function isSamePath(a: ReadingFault | undefined, b: ReadingFault | undefined): boolean {
  if (!a?.path || !b?.path || a.path.between !== b.path.between) return false;
  return Math.abs(a.path.logOhm - b.path.logOhm) <= a.path.spread + b.path.spread;
}

function isAlike({ kernels, functions }: Baseline, a: number, b: number): boolean {
  const { faults } = kernels.dictionary;
  if (isSamePath(faults[a - 1], faults[b - 1])) return true;
  const { draws, points, values } = kernels.dictionary;
  const n = points.length;
  for (let d = 0; d < draws; d += Math.max(1, Math.floor(draws / COMPARED)))
    for (let p = 0; p < n; p++) {
      const [x, y] = [values[(a * draws + d) * n + p]!, values[(b * draws + d) * n + p]!];
      if (Number.isNaN(x) !== Number.isNaN(y)) return false;
      if (x === y || Number.isNaN(x)) continue;
      if (x === Infinity || y === Infinity) return false;
      const { mode } = points[p]!;
      if (Math.abs(x - y) > Math.max(kernels.limit(mode, x), kernels.limit(mode, y))) return false;
    }
  for (const works of functions.values()) if (Math.abs(works[a * draws]! - works[b * draws]!) > WORKS_APART) return false;
  return true;
}
