/** A least-squares fit: coefficients and what is left of the values. */
export interface LeastSquares {
  readonly coefficients: Float64Array;
  /** Standard errors of the coefficients, when the residuals have one variance. NaN without degrees of freedom. */
  readonly errors: Float64Array;
  /** Residual standard deviation: √(Σ w r² / (rows − columns)). */
  readonly spread: number;
  readonly residuals: Float64Array;
  /** Σ of squared residuals, weighted. */
  readonly residualSum: number;
  /** (XᵀWX)⁻¹, column by column. */
  readonly covariance: readonly Float64Array[];
}

/**
 * The coefficients b that make Σ wᵢ (yᵢ − xᵢ·b)² least, by Householder's reflections (1958; Golub & Van Loan, algorithm 5.2.1), with one step
 * of refinement on the residuals. `rows` are the xᵢ, all of the same length, a constant column included where it is wanted. Null when the columns
 * do not stand apart (a reflected column of less than 1e-13 of its length) or there are fewer rows than columns.
 */
export function leastSquares(rows: readonly (readonly number[])[], y: readonly number[], weights?: readonly number[]): LeastSquares | null {
  const columns = rows[0]?.length ?? 0;
  if (columns === 0 || rows.length < columns) return null;
  const root = Float64Array.from(rows, (_, i) => Math.sqrt(weights?.[i] ?? 1));
  const factor = factorise(rows, root, columns);
  if (!factor) return null;
  const weighted = (values: ArrayLike<number>): Float64Array => Float64Array.from(root, (r, i) => r * values[i]!);
  const coefficients = solve(factor, weighted(y));
  const refined = solve(factor, weighted(residualsOf(rows, y, coefficients)));
  coefficients.forEach((_, j) => (coefficients[j]! += refined[j]!));
  const residuals = residualsOf(rows, y, coefficients);
  const residualSum = residuals.reduce((sum, r, i) => sum + (root[i]! * r) ** 2, 0);
  const spread = Math.sqrt(residualSum / (rows.length - columns));
  const covariance = inverseOfNormal(factor);
  const errors = Float64Array.from(covariance, (column, j) => spread * Math.sqrt(column[j]!));
  return { coefficients, errors, spread, residuals, residualSum, covariance };
}

/** Reflections below the diagonal and in `lead`, R above; each column has a length in `columns`. */
interface Factor {
  readonly columns: readonly Float64Array[];
  readonly lead: Float64Array;
  readonly diagonal: Float64Array;
}

function factorise(rows: readonly (readonly number[])[], root: Float64Array, count: number): Factor | null {
  const columns = Array.from({ length: count }, (_, j) => Float64Array.from(rows, (row, i) => root[i]! * row[j]!));
  const [lead, diagonal] = [new Float64Array(count), new Float64Array(count)];
  for (let k = 0; k < count; k++) {
    const column = columns[k]!;
    const whole = lengthFrom(column, 0);
    const length = lengthFrom(column, k);
    if (!(length > 1e-13 * whole)) return null;
    const alpha = column[k]! > 0 ? -length : length;
    lead[k] = column[k]! - alpha;
    diagonal[k] = alpha;
    column[k] = lead[k]!;
    for (let j = k + 1; j < count; j++) reflect(column, k, columns[j]!);
  }
  return { columns, lead, diagonal };
}

function lengthFrom(column: Float64Array, from: number): number {
  let sum = 0;
  for (let i = from; i < column.length; i++) sum += column[i]! * column[i]!;
  return Math.sqrt(sum);
}

/** Takes `target` to its mirror image in the plane at right angles to the reflection stored in `column` from `k` on. */
function reflect(column: Float64Array, k: number, target: Float64Array): void {
  let [dot, square] = [0, 0];
  for (let i = k; i < column.length; i++) {
    dot += column[i]! * target[i]!;
    square += column[i]! * column[i]!;
  }
  const by = (2 * dot) / square;
  for (let i = k; i < column.length; i++) target[i]! -= by * column[i]!;
}

function solve({ columns, diagonal }: Factor, values: Float64Array): Float64Array {
  columns.forEach((column, k) => reflect(column, k, values));
  const result = new Float64Array(columns.length);
  for (let k = columns.length - 1; k >= 0; k--) {
    let value = values[k]!;
    for (let j = k + 1; j < columns.length; j++) value -= columns[j]![k]! * result[j]!;
    result[k] = value / diagonal[k]!;
  }
  return result;
}

/** R⁻¹ R⁻ᵀ. */
function inverseOfNormal({ columns, diagonal }: Factor): Float64Array[] {
  const n = columns.length;
  const inverse = Array.from({ length: n }, () => new Float64Array(n));
  for (let j = 0; j < n; j++) {
    inverse[j]![j] = 1 / diagonal[j]!;
    for (let i = j - 1; i >= 0; i--) {
      let value = 0;
      for (let k = i + 1; k <= j; k++) value -= columns[k]![i]! * inverse[j]![k]!;
      inverse[j]![i] = value / diagonal[i]!;
    }
  }
  return Array.from({ length: n }, (_, a) =>
    Float64Array.from({ length: n }, (__, b) => inverse.reduce((sum, column) => sum + column[a]! * column[b]!, 0)),
  );
}

function residualsOf(rows: readonly (readonly number[])[], y: readonly number[], coefficients: Float64Array): Float64Array {
  return Float64Array.from(rows, (row, i) => row.reduce((left, x, j) => left - x * coefficients[j]!, y[i]!));
}
