/**
 * Sparse LU for many matrices of one pattern: the order of pivots and every place of fill are found once, then a factorisation is one run
 * through a flat list of positions. Order: Markowitz (1957) count among entries of at least `PIVOT_THRESHOLD` of their column's largest.
 */
export interface SparsePattern {
  readonly size: number;
  /** Row and column of each entry; the same place may come twice and means one entry. */
  readonly rows: readonly number[];
  readonly cols: readonly number[];
}

export class SparseLuError extends Error {
  constructor(readonly code: 'structurally-singular') {
    super('no pivot is left: the matrix is singular whatever its values');
    this.name = 'SparseLuError';
  }
}

const PIVOT_THRESHOLD = 1e-3;
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

  /** Orders the pivots by the pattern and by typical magnitudes, one for each entry. Throws SparseLuError where no order exists. */
  constructor(pattern: SparsePattern, magnitudes: ArrayLike<number>) {
    const plan = planElimination(pattern, magnitudes);
    this.size = pattern.size;
    this.slots = plan.slots;
    this.values = new Float64Array(plan.count + 1);
    this.program = Int32Array.from(plan.program);
    this.forward = Int32Array.from(plan.forward);
    this.backward = Int32Array.from(plan.backward);
    this.pivotRow = Int32Array.from(plan.pivotRow);
    this.pivotCol = Int32Array.from(plan.pivotCol);
    this.pivotSlot = Int32Array.from(plan.pivotSlot);
    this.work = new Float64Array(pattern.size);
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

interface Plan {
  slots: Int32Array;
  count: number;
  program: number[];
  forward: number[];
  backward: number[];
  pivotRow: number[];
  pivotCol: number[];
  pivotSlot: number[];
}

/** The active part of the matrix while pivots are chosen: slot and present magnitude by row and column. */
interface Active {
  readonly rows: Map<number, number>[];
  readonly cols: Set<number>[];
  readonly magnitude: number[];
}

function planElimination(pattern: SparsePattern, magnitudes: ArrayLike<number>): Plan {
  const active: Active = { rows: [], cols: [], magnitude: [] };
  for (let i = 0; i < pattern.size; i++) {
    active.rows.push(new Map());
    active.cols.push(new Set());
  }
  const slots = Int32Array.from(pattern.rows, (row, i) => enter(active, row, pattern.cols[i]!, Math.abs(magnitudes[i]!)));
  const plan: Plan = { slots, count: 0, program: [], forward: [], backward: [], pivotRow: [], pivotCol: [], pivotSlot: [] };
  const upper: [number, number][][] = [];
  const left = new Set(active.rows.keys());
  while (left.size > 0) {
    const { row, col } = choosePivot(active, left);
    left.delete(row);
    upper.push(eliminate(active, row, col, plan));
  }
  const order = new Map(plan.pivotCol.map((col, k) => [col, k]));
  for (let k = pattern.size - 1; k >= 0; k--) {
    plan.backward.push(upper[k]!.length);
    for (const [slot, col] of upper[k]!) plan.backward.push(slot, order.get(col)!);
  }
  plan.count = active.magnitude.length;
  return plan;
}

function enter(active: Active, row: number, col: number, magnitude: number): number {
  let slot = active.rows[row]!.get(col);
  if (slot === undefined) {
    slot = active.magnitude.push(0) - 1;
    active.rows[row]!.set(col, slot);
    active.cols[col]!.add(row);
  }
  active.magnitude[slot]! += magnitude;
  return slot;
}

/** The entry with the least Markowitz count that is large enough in its column; the larger one on a tie. */
function choosePivot(active: Active, left: ReadonlySet<number>): { row: number; col: number } {
  const largest = active.cols.map((rows, col) => {
    let most = 0;
    for (const row of rows) most = Math.max(most, active.magnitude[active.rows[row]!.get(col)!]!);
    return most;
  });
  let best = { row: -1, col: -1, count: Infinity, size: 0 };
  for (const row of left) {
    for (const [col, slot] of active.rows[row]!) {
      const size = active.magnitude[slot]!;
      if (size === 0 || size < PIVOT_THRESHOLD * largest[col]!) continue;
      const count = (active.rows[row]!.size - 1) * (active.cols[col]!.size - 1);
      if (count < best.count || (count === best.count && size > best.size)) best = { row, col, count, size };
    }
  }
  if (best.row < 0) throw new SparseLuError('structurally-singular');
  return best;
}

/** Removes the pivot's row and column from the active part, adds the fill, and writes down the steps. Returns the rest of the pivot's row. */
function eliminate(active: Active, row: number, col: number, plan: Plan): [number, number][] {
  const pivotSlot = active.rows[row]!.get(col)!;
  const below = [...active.cols[col]!].filter((other) => other !== row);
  const right = [...active.rows[row]!].filter(([other]) => other !== col);
  plan.pivotRow.push(row);
  plan.pivotCol.push(col);
  plan.pivotSlot.push(pivotSlot);
  plan.program.push(below.length);
  for (const other of below) {
    const slot = active.rows[other]!.get(col)!;
    const share = active.magnitude[slot]! / active.magnitude[pivotSlot]!;
    plan.forward.push(other, slot, row);
    plan.program.push(slot, right.length);
    for (const [across, source] of right) plan.program.push(enter(active, other, across, share * active.magnitude[source]!), source);
    active.rows[other]!.delete(col);
  }
  for (const [across] of right) active.cols[across]!.delete(row);
  active.cols[col]!.clear();
  return right.map(([across, slot]) => [slot, across]);
}
