import { leastSquares, type LeastSquares } from './least-squares.ts';
import { median } from './robust.ts';

/** Beyond so many spreads a residual pulls no harder: 95 % efficient on normal errors. Huber (1964). */
const HUBER_TUNING = 1.345;
/** Φ⁻¹(3/4): the median of |r| of a normal sample, in standard deviations. */
const MEDIAN_OF_ABSOLUTE = 0.6745;
const MOST_ROUNDS = 60;

export interface HuberRegression extends LeastSquares {
  /** Spread of the residuals that wild ones cannot move: median of |r| / 0.6745. */
  readonly scale: number;
  /** Weight of each row that its residual left it, 0..1. */
  readonly trust: Float64Array;
}

/**
 * Regression by Huber's M-estimate: reweighted least squares, the scale of the residuals measured anew in each round (Huber 1964, 1981, chapter 7;
 * the default of R's `rlm`). Rows of weight w count as if seen w times. Null where least squares has no answer.
 */
export function huberRegression(
  rows: readonly (readonly number[])[],
  y: readonly number[],
  weights?: readonly number[],
): HuberRegression | null {
  let fit = leastSquares(rows, y, weights);
  if (!fit) return null;
  let trust = new Float64Array(rows.length).fill(1);
  let scale = scaleOf(fit.residuals);
  for (let round = 0; round < MOST_ROUNDS && scale > 0; round++) {
    trust = fit.residuals.map((r) => Math.min(1, (HUBER_TUNING * scale) / Math.max(Math.abs(r), 1e-300))) as Float64Array<ArrayBuffer>;
    const next = leastSquares(
      rows,
      y,
      Array.from(trust, (t, i) => t * (weights?.[i] ?? 1)),
    );
    if (!next) break;
    const moved = next.residuals.reduce((sum, r, i) => sum + (r - fit!.residuals[i]!) ** 2, 0);
    const size = fit.residuals.reduce((sum, r) => sum + r * r, 0);
    fit = next;
    scale = scaleOf(fit.residuals);
    if (moved < 1e-20 * size) break;
  }
  return { ...fit, scale, trust };
}

const scaleOf = (residuals: Float64Array): number => median(Array.from(residuals, Math.abs)) / MEDIAN_OF_ABSOLUTE;
