import type { Kernels } from '../../src/core/diagnosis/readings/index.ts';
import type { Learned } from './diagnosis-board.ts';

/** A reading tells a faulty board from a healthy one when it is so many spreads off, or turns to or from OL. */
const TOLD_APART = 3;

/**
 * By number of readings 0..most, an upper bound of the share of faulty boards (by rate) that any so many points, in any order, can tell from a healthy board
 * at all. Until one has, every reading so far was that of a healthy board, so also an order that follows what it reads takes the same points. The best
 * choice of k points is bounded by what a greedy choice of j reaches plus the k largest gains that are left (Nemhauser, Wolsey & Fisher 1978, the
 * inequality behind their Proposition 4.2; from memory), for the best j.
 */
export function reachBound({ board, baseline }: Learned, most: number): number[] {
  const rates = board.faults.map(({ rate }) => rate);
  const whole = rates.reduce((sum, rate) => sum + rate, 0);
  const told = board.points.map((_, p) => toldAt(baseline.kernels, p));
  const left = new Set(rates.keys());
  const bound = Array.from({ length: most + 1 }, () => 1);
  for (let j = 0, reached = 0; j <= most; j++) {
    const gains = told.map((faults) => faults.reduce((sum, fault) => (left.has(fault) ? sum + rates[fault]! : sum), 0) / whole);
    const sorted = gains.toSorted((a, b) => b - a);
    for (let k = 0, top = reached; k <= most; top += sorted[k++]!) bound[k] = Math.min(bound[k]!, top);
    const best = gains.indexOf(sorted[0]!);
    reached += gains[best]!;
    for (const fault of told[best]!) left.delete(fault);
  }
  return bound;
}

/** The faults that a point tells from a healthy board: by the departure of the belief's own kernels, which are narrower than the whole spread. */
const toldAt = ({ rows, far }: Kernels, p: number): number[] =>
  Array.from({ length: rows - 1 }, (_, fault) => fault).filter((fault) => far[p * rows + fault + 1]! >= TOLD_APART);
