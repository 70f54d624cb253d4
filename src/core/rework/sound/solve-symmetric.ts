/** Solution of A x = b, A symmetric and positive with its lower half given row by row: Cholesky with rows and columns scaled to a diagonal of ones. */
export function solveSymmetric(lower: Float64Array, right: Float64Array): number[] {
  const n = right.length;
  const scale = Float64Array.from({ length: n }, (_, i) => 1 / Math.sqrt(Math.max(lower[i * n + i]!, 1e-300)));
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j <= i; j++) {
      let sum = lower[i * n + j]! * scale[i]! * scale[j]!;
      for (let k = 0; k < j; k++) sum -= l[i * n + k]! * l[j * n + k]!;
      l[i * n + j] = i === j ? Math.sqrt(Math.max(sum, 1e-14)) : sum / l[j * n + j]!;
    }
  const y = Array<number>(n).fill(0);
  for (let i = 0; i < n; i++) {
    let sum = right[i]! * scale[i]!;
    for (let k = 0; k < i; k++) sum -= l[i * n + k]! * y[k]!;
    y[i] = sum / l[i * n + i]!;
  }
  for (let i = n - 1; i >= 0; i--) {
    let sum = y[i]!;
    for (let k = i + 1; k < n; k++) sum -= l[k * n + i]! * y[k]!;
    y[i] = sum / l[i * n + i]!;
  }
  return y.map((each, i) => each * scale[i]!);
}
