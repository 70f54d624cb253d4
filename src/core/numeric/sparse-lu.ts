import { planElimination, type EliminationPlan } from './pivot-order.ts';

/**
 * Sparse LU for many matrices of one pattern: the order of pivots and every place of fill are found once (`planElimination`), then a
 * factorisation is one run through a flat list of positions.
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
  /** Entries to fill before `factor`: position of entry i of the pattern is `slots[i]`. */
  readonly values: Float64Array;
  readonly slots: Int32Array;
  private readonly program: Int32Array;
  private readonly forward: Int32Array;
  private readonly backward: Int32Array;
  private readonly pivotRow: Int32Array;
  private readonly pivotCol: Int32Array;
  private readonly pivotSlot: Int32Array;
  private readonly work: Float64Array;

  /**
   * Orders the pivots by the pattern and by typical values, one for each entry. Undefined where no pivot is left at some step: a matrix of
   * these values is singular.
   */
  static ordered(pattern: SparsePattern, values: ArrayLike<number>): SparseLu | undefined {
    const plan = planElimination(pattern.size, pattern.rows, pattern.cols, values);
    return plan && new SparseLu(pattern.size, plan);
  }

  private constructor(size: number, plan: EliminationPlan) {
    this.size = size;
    this.slots = plan.slots;
    this.values = new Float64Array(plan.count + 1);
    this.program = Int32Array.from(plan.program);
    this.forward = Int32Array.from(plan.forward);
    this.backward = Int32Array.from(plan.backward);
    this.pivotRow = Int32Array.from(plan.pivotRow);
    this.pivotCol = Int32Array.from(plan.pivotCol);
    this.pivotSlot = Int32Array.from(plan.pivotSlot);
    this.work = new Float64Array(size);
  }

  /** Factors `values` in place. False when a pivot vanishes: these values need another order, or the matrix is singular. */
  factor(): boolean {
    const { values, program, pivotSlot } = this;
    let at = 0;
    for (let k = 0; k < this.size; k++) {
      const pivot = values[pivotSlot[k]!]!;
      if (!(Math.abs(pivot) > TINY)) return false;
      const inverse = 1 / pivot;
      for (let below = program[at++]!; below > 0; below--) {
        const slot = program[at]!;
        const end = at + 2 + 2 * program[at + 1]!;
        at += 2;
        const share = values[slot]! * inverse;
        values[slot] = share;
        if (share === 0) at = end;
        else for (; at < end; at += 2) values[program[at]!]! -= share * values[program[at + 1]!]!;
      }
    }
    return true;
  }

  /** Solves for the right side `b` (by row) and writes the solution into `x` (by column); `b` is overwritten. Needs `factor` before. */
  solve(b: Float64Array, x: Float64Array): void {
    const { values, forward, backward, work } = this;
    for (let at = 0; at < forward.length; at += 3) b[forward[at]!]! -= values[forward[at + 1]!]! * b[forward[at + 2]!]!;
    let at = 0;
    for (let k = this.size - 1; k >= 0; k--) {
      let sum = b[this.pivotRow[k]!]!;
      for (let count = backward[at++]!; count > 0; count--, at += 2) sum -= values[backward[at]!]! * work[backward[at + 1]!]!;
      const value = sum / values[this.pivotSlot[k]!]!;
      work[k] = value;
      x[this.pivotCol[k]!] = value;
    }
  }
}
