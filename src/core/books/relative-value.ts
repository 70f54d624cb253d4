import { splitMinor } from '../quantity/index.ts';

/**
 * The cost of a joint purchase shared over its things in proportion to what each is expected to be worth; whole minor
 * units that add up to the cost. Relative sales value method of joint cost (share = cost × value / sum of values);
 * things that are all worth nothing share evenly.
 */
export const splitByValue = (costMinor: number, valuesMinor: readonly number[]): number[] => splitMinor(costMinor, valuesMinor);

/** The part of a cost that goes with a fraction (0 to 1) of the value, in whole minor units; outside 0 to 1 it is clamped. */
export function shareOfCost(costMinor: number, fraction: number): number {
  const clamped = Math.min(1, Math.max(0, fraction));
  return splitMinor(costMinor, [clamped, 1 - clamped])[0]!;
}
