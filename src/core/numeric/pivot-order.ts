/**
 * What a factorisation will do, found once for a pattern; `SparseLu` runs it. The values lie step by step: the pivot, the other entries of its row
 * (the upper part), the other entries of its column (the lower part).
 */
export interface EliminationPlan {
  /** Position among the values of each entry of the pattern. */
  readonly slots: Int32Array;
  /** Position of the pivot of each step; one more than there are steps. */
  readonly starts: Int32Array;
  /** Entries of the upper part of each step. */
  readonly upper: Int32Array;
  /** For an upper entry the step that its column is eliminated in, for a lower one that of its row. */
  readonly steps: Int32Array;
  /** For each step, for each of its lower entries, for each of its upper entries: the position that their product is taken from. */
  readonly targets: Int32Array;
  /** Row and column of the pivot of each step. */
  readonly pivotRow: Int32Array;
  readonly pivotCol: Int32Array;
}

/** A pivot is at least this share of the largest entry of its column. */
const PIVOT_THRESHOLD = 1e-3;
/** Rows and columns that are looked through at each step, shortest first, before the best entry so far is taken. */
const CANDIDATES = 4;
/** Products of one factorisation at most. Boards of some thousand nodes take a hundredth of it; a pattern that fills up takes memory without end. */
const MOST_PRODUCTS = 20_000_000;

/**
 * Orders the pivots by Markowitz's count (1957) among entries that are large enough, looking only at the shortest rows and columns (Zlatev 1980),
 * and lays out every step with its fill. `values` are typical ones, one an entry of the pattern. Undefined where no pivot is left, and where the
 * pattern fills up so much that a factorisation would take more than twenty million products.
 */
export function planElimination(
  size: number,
  rows: readonly number[],
  cols: readonly number[],
  values: ArrayLike<number>,
): EliminationPlan | undefined {
  const active = new Active(size);
  const entered = rows.map((row, i) => active.enter(row, cols[i]!, values[i]!));
  const steps: Step[] = [];
  let products = 0;
  for (let k = 0; k < size; k++) {
    const pivot = active.choose();
    if (pivot < 0) return undefined;
    products += active.productsOf(pivot);
    if (products > MOST_PRODUCTS) return undefined;
    steps.push(active.eliminate(pivot));
  }
  return layOut(active, steps, entered);
}

/** One step of the elimination by slots: its pivot, the rest of the pivot's row and column, and a target for each pair of those. */
interface Step {
  readonly pivot: number;
  readonly right: readonly number[];
  readonly below: readonly number[];
  readonly targets: readonly number[];
}

/** Numbers the slots anew in the order in which they are used. */
function layOut({ rowOf, colOf }: Active, steps: readonly Step[], entered: readonly number[]): EliminationPlan {
  const size = steps.length;
  const [stepOfRow, stepOfCol] = [new Int32Array(size), new Int32Array(size)];
  steps.forEach(({ pivot }, k) => {
    stepOfRow[rowOf[pivot]!] = k;
    stepOfCol[colOf[pivot]!] = k;
  });
  const [starts, upper] = [new Int32Array(size + 1), new Int32Array(size)];
  const [position, stepOf] = [new Int32Array(rowOf.length), new Int32Array(rowOf.length)];
  let at = 0;
  const place = (slot: number, step: number): void => {
    position[slot] = at;
    stepOf[at++] = step;
  };
  steps.forEach(({ pivot, right, below }, k) => {
    starts[k] = at;
    upper[k] = right.length;
    place(pivot, k);
    for (const slot of right) place(slot, stepOfCol[colOf[slot]!]!);
    for (const slot of below) place(slot, stepOfRow[rowOf[slot]!]!);
  });
  starts[size] = at;
  const targets = new Int32Array(steps.reduce((sum, step) => sum + step.targets.length, 0));
  let target = 0;
  for (const step of steps) for (const slot of step.targets) targets[target++] = position[slot]!;
  const slots = new Int32Array(entered.length);
  entered.forEach((slot, i) => (slots[i] = position[slot]!));
  const pivots = steps.map(({ pivot }) => pivot);
  return {
    slots,
    starts,
    upper,
    steps: stepOf,
    targets,
    pivotRow: Int32Array.from(pivots, (slot) => rowOf[slot]!),
    pivotCol: Int32Array.from(pivots, (slot) => colOf[slot]!),
  };
}

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

  /** How many products it takes to eliminate this pivot. */
  productsOf(pivot: number): number {
    return (this.byRow[this.rowOf[pivot]!]!.length - 1) * (this.byCol[this.colOf[pivot]!]!.length - 1);
  }

  /** Takes the pivot's row and column out and adds the fill. */
  eliminate(pivot: number): Step {
    const [row, col] = [this.rowOf[pivot]!, this.colOf[pivot]!];
    const right = this.byRow[row]!.filter((slot) => slot !== pivot);
    const below = this.byCol[col]!.filter((slot) => slot !== pivot);
    const targets: number[] = [];
    for (const slot of below) this.subtract(slot, pivot, right, targets);
    for (const slot of right) remove(this.byCol[this.colOf[slot]!]!, slot);
    remove(this.openRows, row);
    remove(this.openCols, col);
    return { pivot, right, below, targets };
  }

  /** Takes the pivot's row off the row of `slot`, so that nothing is left of `slot`. */
  private subtract(slot: number, pivot: number, right: readonly number[], targets: number[]): void {
    const row = this.rowOf[slot]!;
    const share = this.values[slot]! / this.values[pivot]!;
    for (const other of this.byRow[row]!) this.slotAt[this.colOf[other]!] = other + 1;
    for (const source of right) {
      const col = this.colOf[source]!;
      const target = this.slotAt[col] === 0 ? this.add(row, col) : this.slotAt[col]! - 1;
      this.values[target]! -= share * this.values[source]!;
      targets.push(target);
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
