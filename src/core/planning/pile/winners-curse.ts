import { PlanningError } from '../planning-error.ts';

/**
 * How far the highest of `bidders` honest guesses lies above the truth on average, when each errs evenly within ±`error`:
 * error · (n − 1) / (n + 1) (Kagel & Levin 1986; idea of Capen, Clapp & Campbell 1971).
 */
export const winnersBias = (error: number, bidders: number): number => (error * (bidders - 1)) / (bidders + 1);

/**
 * The error of the highest of `bidders` guesses as `count` equally likely values, rising, whose mean is the bias exactly: each is the mean
 * over its share of the distribution function ((x + error) / 2 error)ⁿ. Throws `PlanningError` unless there is at least one bidder and value.
 */
export function winnersErrors(error: number, bidders: number, count: number): number[] {
  if (!(bidders >= 1) || !(count >= 1))
    throw new PlanningError('bad-count', `at least one bidder and one value, got ${bidders} and ${count}`);
  // The p-quantile is error · (2 p^(1/n) − 1); its integral from 0 to p is error · (2n/(n + 1) · p^((n + 1)/n) − p).
  const integral = (p: number): number => error * (((2 * bidders) / (bidders + 1)) * p ** ((bidders + 1) / bidders) - p);
  return Array.from({ length: count }, (_, i) => count * (integral((i + 1) / count) - integral(i / count)));
}
