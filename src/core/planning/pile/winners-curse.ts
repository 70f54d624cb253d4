import { PlanningError } from '../planning-error.ts';

/**
 * How far the highest of `bidders` honest guesses lies above the truth on average, when each errs evenly within ±`error`:
 * error · (n − 1) / (n + 1) (Kagel & Levin 1986; idea of Capen, Clapp & Campbell 1971).
 */
export const winnersBias = (error: number, bidders: number): number => (error * (bidders - 1)) / (bidders + 1);

/**
 * The p-quantile of the error of the highest of `bidders` guesses, whose distribution function is ((x + error) / 2 error)ⁿ: error · (2 p^(1/n) − 1),
 * 0 ≤ p ≤ 1. Throws `PlanningError` without a bidder.
 */
export function winnersError(error: number, bidders: number, p: number): number {
  if (!(bidders >= 1)) throw new PlanningError('bad-count', `at least one bids, got ${bidders}`);
  return error * (2 * p ** (1 / bidders) - 1);
}
