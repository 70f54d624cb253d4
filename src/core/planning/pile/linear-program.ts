/**
 * Maximise cost · x, with rows lower ≤ A x ≤ upper and bounds on x; ±Infinity for none. A is row by row: entries
 * `starts[i]` to `starts[i + 1]` of `indices` (columns) and `values` are those of row i.
 */
export interface LinearProgram {
  readonly cost: Float64Array;
  readonly lower: Float64Array;
  readonly upper: Float64Array;
  /** 1 where x must be whole; left out, nowhere. */
  readonly whole?: Uint8Array;
  readonly rowLower: Float64Array;
  readonly rowUpper: Float64Array;
  readonly starts: Int32Array;
  readonly indices: Int32Array;
  readonly values: Float64Array;
}

export type LinearAnswer =
  | {
      readonly ok: true;
      readonly objective: number;
      readonly x: Float64Array;
      /** What one more unit of each row's limit adds to the objective; zeros for whole programs. */
      readonly prices: Float64Array;
    }
  | { readonly ok: false; readonly code: 'infeasible' | 'unbounded' | 'not-solved'; readonly detail: string };

/** What planning needs of the world: something that solves a linear program. */
export type SolveLinearProgram = (program: LinearProgram) => Promise<LinearAnswer>;

/** Gathers a linear program piece by piece. */
export class LinearProgramBuilder {
  private readonly costs: number[] = [];
  private readonly lowers: number[] = [];
  private readonly uppers: number[] = [];
  private readonly wholes: number[] = [];
  private readonly rowLowers: number[] = [];
  private readonly rowUppers: number[] = [];
  private readonly starts: number[] = [0];
  private readonly indices: number[] = [];
  private readonly values: number[] = [];

  /** A new column; its index comes out. */
  column(cost: number, lower: number, upper: number, whole = false): number {
    this.costs.push(cost);
    this.lowers.push(lower);
    this.uppers.push(upper);
    this.wholes.push(whole ? 1 : 0);
    return this.costs.length - 1;
  }

  /** A new row of (column, value) pairs, each column once; its index comes out. */
  row(lower: number, upper: number, entries: Iterable<readonly [number, number]>): number {
    for (const [column, value] of entries) {
      if (value === 0) continue;
      this.indices.push(column);
      this.values.push(value);
    }
    this.starts.push(this.indices.length);
    this.rowLowers.push(lower);
    this.rowUppers.push(upper);
    return this.rowLowers.length - 1;
  }

  build(): LinearProgram {
    return {
      cost: Float64Array.from(this.costs),
      lower: Float64Array.from(this.lowers),
      upper: Float64Array.from(this.uppers),
      ...(this.wholes.includes(1) ? { whole: Uint8Array.from(this.wholes) } : {}),
      rowLower: Float64Array.from(this.rowLowers),
      rowUpper: Float64Array.from(this.rowUppers),
      starts: Int32Array.from(this.starts),
      indices: Int32Array.from(this.indices),
      values: Float64Array.from(this.values),
    };
  }
}
