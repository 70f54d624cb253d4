/** 1/Φ⁻¹(3/4): the median absolute deviation of a normal sample times this is its standard deviation. */
export const MAD_TO_SIGMA = 1.4826;

/** Middle value, or the mean of the two middle ones. NaN of no values. */
export function median(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  if (sorted.length === 0) return Number.NaN;
  return sorted.length % 2 === 1 ? sorted[middle]! : (sorted[middle - 1]! + sorted[middle]!) / 2;
}

/** Spread of a sample that a minority of wild values cannot move: median of |x − median| × 1.4826, comparable with a standard deviation. */
export function medianDeviation(values: readonly number[]): number {
  const centre = median(values);
  return MAD_TO_SIGMA * median(values.map((value) => Math.abs(value - centre)));
}

/** Beyond so many spreads from the centre a value pulls no harder. Huber (1964); the usual choice of R's MASS. */
const HUBER_K = 1.5;
const MOST_ROUNDS = 500;

/**
 * Location of a sample by Huber's M-estimate (1964) with the spread held at the median deviation: values beyond `k`
 * spreads count as if they lay there. The median when the spread is nothing; NaN of no values.
 */
export function huberLocation(values: readonly number[], k: number = HUBER_K): number {
  const spread = medianDeviation(values);
  let centre = median(values);
  if (!(spread > 0)) return centre;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    const reach = k * spread;
    const sum = values.reduce((total, value) => total + Math.min(centre + reach, Math.max(centre - reach, value)), 0);
    const next = sum / values.length;
    if (Math.abs(next - centre) < 1e-10 * spread) return next;
    centre = next;
  }
  return centre;
}
