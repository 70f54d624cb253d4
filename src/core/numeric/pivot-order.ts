/** What a factorisation will do, found once for a pattern: see `SparseLu`, which runs it. */
export interface EliminationPlan {
  /** Position among the values of each entry of the pattern. */
  readonly slots: Int32Array;
  /** Positions in all, fill included. */
  readonly count: number;
  /** For each pivot: rows below it; for each of them its slot, entries to its right, and pairs of target and source. */
  readonly program: number[];
  /** Triples of row, slot and pivot's row, in the order of the forward substitution. */
  readonly forward: number[];
  /** For each pivot, last first: entries to its right, then pairs of slot and step. */
  readonly backward: number[];
  readonly pivotRow: number[];
  readonly pivotCol: number[];
  readonly pivotSlot: number[];
}

/** A pivot is at least this share of the largest entry of its column. */
const PIVOT_THRESHOLD = 1e-3;
/** Rows and columns that are looked through at each step, shortest first, before the best entry so far is taken. */
const CANDIDATES = 4;

/**
 * Orders the pivots by Markowitz's count (1957) among entries that are large enough, looking only at the shortest rows and columns (Zlatev 1980),
 * and writes down every step with its fill. `values` are typical ones, one an entry of the pattern. Undefined where no pivot is left.
 */
export function planElimination(
  size: number,
  rows: readonly number[],
  cols: readonly number[],
  values: ArrayLike<number>,
): EliminationPlan | undefined {
  const active = new Active(size);
  const slots = Int32Array.from(rows, (row, i) => active.enter(row, cols[i]!, values[i]!));
  const upper: number[][] = [];
  const plan = { program: [], forward: [], backward: [] as number[], pivotRow: [], pivotCol: [] as number[], pivotSlot: [] };
  for (let k = 0; k < size; k++) {
    const pivot = active.choose();
    if (pivot < 0) return undefined;
    upper.push(active.eliminate(pivot, plan));
  }
  const order = new Int32Array(size);
  plan.pivotCol.forEach((col, k) => (order[col] = k));
  for (let k = size - 1; k >= 0; k--) {
    plan.backward.push(upper[k]!.length);
    for (const slot of upper[k]!) plan.backward.push(slot, order[active.colOf[slot]!]!);
  }
  return { slots, count: active.rowOf.length, ...plan };
}

type Steps = Pick<EliminationPlan, 'program' | 'forward' | 'pivotRow' | 'pivotCol' | 'pivotSlot'>;

/** The part of the matrix that is not yet eliminated: slots by row and by column, with row, column and present value of each slot. */
class Active {
  readonly rowOf: number[] = [];
  readonly colOf: number[] = [];
  private readonly values: number[] = [];
  private readonly byRow: number[][];
  private readonly byCol: number[][];
  private readonly openRows: number[];
  private readonly openCols: number[];
  /** While a row is changed: its slot in each column, plus one; zero elsewhere. */
  private readonly slotAt: Int32Array;

  constructor(size: number) {
    this.byRow = Array.from({ length: size }, () => []);
    this.byCol = Array.from({ length: size }, () => []);
    this.openRows = Array.from({ length: size }, (_, i) => i);
    this.openCols = Array.from({ length: size }, (_, i) => i);
    this.slotAt = new Int32Array(size);
  }

  /** The slot of a place, made if need be; the value is added to what it holds. */
  enter(row: number, col: number, value: number): number {
    const found = this.byRow[row]!.find((slot) => this.colOf[slot] === col) ?? this.add(row, col);
    this.values[found]! += value;
    return found;
  }

  private add(row: number, col: number): number {
    const slot = this.rowOf.push(row) - 1;
    this.colOf.push(col);
    this.values.push(0);
    this.byRow[row]!.push(slot);
    this.byCol[col]!.push(slot);
    return slot;
  }

  /** The slot of the next pivot, or −1. When none of the shortest lines holds one that is large enough, all lines are looked through. */
  choose(): number {
    const best = this.bestOf(shortest(this.openRows, this.byRow, CANDIDATES), shortest(this.openCols, this.byCol, CANDIDATES));
    return best >= 0 ? best : this.bestOf(this.openRows, []);
  }

  private bestOf(rows: readonly number[], cols: readonly number[]): number {
    let [best, least, largest] = [-1, Infinity, 0];
    const consider = (slot: number): void => {
      const size = Math.abs(this.values[slot]!);
      const count = (this.byRow[this.rowOf[slot]!]!.length - 1) * (this.byCol[this.colOf[slot]!]!.length - 1);
      if (size === 0 || count > least || (count === least && size <= largest) || !this.isLarge(slot)) return;
      [best, least, largest] = [slot, count, size];
    };
    for (const row of rows) this.byRow[row]!.forEach(consider);
    for (const col of cols) this.byCol[col]!.forEach(consider);
    return best;
  }

  private isLarge(slot: number): boolean {
    let most = 0;
    for (const other of this.byCol[this.colOf[slot]!]!) most = Math.max(most, Math.abs(this.values[other]!));
    return Math.abs(this.values[slot]!) >= PIVOT_THRESHOLD * most;
  }

  /** Takes the pivot's row and column out, adds the fill, and writes down the steps. Returns the other slots of the pivot's row. */
  eliminate(pivot: number, steps: Steps): number[] {
    const [row, col] = [this.rowOf[pivot]!, this.colOf[pivot]!];
    const right = this.byRow[row]!.filter((slot) => slot !== pivot);
    const below = this.byCol[col]!.filter((slot) => slot !== pivot);
    steps.pivotRow.push(row);
    steps.pivotCol.push(col);
    steps.pivotSlot.push(pivot);
    steps.program.push(below.length);
    for (const slot of below) this.subtract(slot, pivot, right, steps);
    for (const slot of right) remove(this.byCol[this.colOf[slot]!]!, slot);
    remove(this.openRows, row);
    remove(this.openCols, col);
    return right;
  }

  private subtract(slot: number, pivot: number, right: readonly number[], steps: Steps): void {
    const row = this.rowOf[slot]!;
    const share = this.values[slot]! / this.values[pivot]!;
    steps.forward.push(row, slot, this.rowOf[pivot]!);
    steps.program.push(slot, right.length);
    for (const other of this.byRow[row]!) this.slotAt[this.colOf[other]!] = other + 1;
    for (const source of right) {
      const col = this.colOf[source]!;
      const target = this.slotAt[col] === 0 ? this.add(row, col) : this.slotAt[col]! - 1;
      this.values[target]! -= share * this.values[source]!;
      steps.program.push(target, source);
    }
    for (const other of this.byRow[row]!) this.slotAt[this.colOf[other]!] = 0;
    remove(this.byRow[row]!, slot);
  }
}

/** The lines with the fewest slots, at most so many, empty ones left out. */
function shortest(open: readonly number[], slots: readonly number[][], count: number): number[] {
  const found: number[] = [];
  for (const line of open) {
    const length = slots[line]!.length;
    if (length === 0 || (found.length === count && length >= slots[found.at(-1)!]!.length)) continue;
    let at = Math.min(found.length, count - 1);
    while (at > 0 && slots[found[at - 1]!]!.length > length) {
      found[at] = found[at - 1]!;
      at--;
    }
    found[at] = line;
  }
  return found;
}

/** Takes one value out of a list whose order does not matter. */
function remove(list: number[], value: number): void {
  const at = list.indexOf(value);
  list[at] = list.at(-1)!;
  list.pop();
}
