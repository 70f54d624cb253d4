import { PlanningError } from '../planning-error.ts';

/**
 * How far the highest of `bidders` honest guesses lies above the truth on average, when each errs evenly within ±`error`:
 * error · (n − 1) / (n + 1) (Kagel & Levin 1986; idea of Capen, Clapp & Campbell 1971).
 */
export const winnersBias = (error: number, bidders: number): number => (error * (bidders - 1)) / (bidders + 1);

/**
 * The error of the highest of `bidders` guesses as `count` equally likely values, rising: its distribution function is ((x + error) /
 * 2 error)ⁿ, so the p-quantile is error · (2 p^(1/n) − 1). Throws `PlanningError` unless there is at least one bidder and one value.
 */
export function winnersErrors(error: number, bidders: number, count: number): number[] {
  if (!(bidders >= 1) || !(count >= 1))
    throw new PlanningError('bad-count', `at least one bidder and one value, got ${bidders} and ${count}`);
  return Array.from({ length: count }, (_, i) => error * (2 * ((i + 0.5) / count) ** (1 / bidders) - 1));
}
