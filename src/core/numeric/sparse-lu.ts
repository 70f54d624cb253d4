import { planElimination, type EliminationPlan } from './pivot-order.ts';

/**
 * Sparse LU for many matrices of one pattern: the order of pivots and every place of fill are found once (`planElimination`), then a
 * factorisation is one run through the values.
 */
export interface SparsePattern {
  readonly size: number;
  /** Row and column of each entry; the same place may come twice and means one entry. */
  readonly rows: readonly number[];
  readonly cols: readonly number[];
}

/** A pivot below this share of the largest entry seen counts as zero. */
const TINY = 1e-18;

export class SparseLu {
  readonly size: number;
  /** Entries to fill before `factor`: position of entry i of the pattern is `slots[i]`. The last place belongs to none. */
  readonly values: Float64Array;
  readonly slots: Int32Array;
  private readonly y: Float64Array;

  /**
   * Orders the pivots by the pattern and by typical values, one for each entry. Undefined where no pivot is left at some step: a matrix of
   * these values is singular, or fills up beyond what is worked on.
   */
  static ordered(pattern: SparsePattern, values: ArrayLike<number>): SparseLu | undefined {
    const plan = planElimination(pattern.size, pattern.rows, pattern.cols, values);
    return plan && new SparseLu(plan);
  }

  private constructor(private readonly plan: EliminationPlan) {
    this.size = plan.pivotRow.length;
    this.slots = plan.slots;
    this.values = new Float64Array(plan.steps.length + 1);
    this.y = new Float64Array(this.size);
  }

  /**
   * Factors `values` in place: 1/pivot, the upper part, and the lower part over its pivots. False when a pivot vanishes: these values need another
   * order, or the matrix is singular.
   */
  factor(): boolean {
    const { values, size } = this;
    const { starts, upper, targets } = this.plan;
    let target = 0;
    for (let k = 0; k < size; k++) {
      const at = starts[k]!;
      const pivot = values[at]!;
      if (!(Math.abs(pivot) > TINY)) return false;
      const inverse = 1 / pivot;
      values[at] = inverse;
      const firstLower = at + 1 + upper[k]!;
      const end = starts[k + 1]!;
      for (let lower = firstLower; lower < end; lower++) {
        const share = values[lower]! * inverse;
        values[lower] = share;
        for (let right = at + 1; right < firstLower; right++, target++) values[targets[target]!]! -= share * values[right]!;
      }
    }
    return true;
  }

  /** Solves for the right side `b` (by row) and writes the solution into `x` (by column). Needs `factor` before. */
  solve(b: Float64Array, x: Float64Array): void {
    const { values, y, size } = this;
    const { starts, upper, steps, pivotRow, pivotCol } = this.plan;
    for (let k = 0; k < size; k++) y[k] = b[pivotRow[k]!]!;
    for (let k = 0; k < size; k++) {
      const known = y[k]!;
      if (known === 0) continue;
      const end = starts[k + 1]!;
      for (let at = starts[k]! + 1 + upper[k]!; at < end; at++) y[steps[at]!]! -= values[at]! * known;
    }
    for (let k = size - 1; k >= 0; k--) {
      const pivot = starts[k]!;
      const end = pivot + 1 + upper[k]!;
      let sum = y[k]!;
      for (let at = pivot + 1; at < end; at++) sum -= values[at]! * y[steps[at]!]!;
      const value = sum * values[pivot]!;
      y[k] = value;
      x[pivotCol[k]!] = value;
    }
  }
}
