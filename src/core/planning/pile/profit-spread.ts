import type { ProfitSpread } from './plan.ts';
import { meanOfAll, worstTenth, type Simulated } from './simulate.ts';

const BARS = 20;

/** The spread of the profit over simulated outcomes, what prices add or take counted. */
export function profitSpread({ profits, priceSwings }: Simulated): ProfitSpread {
  const values = profits.map((profit, k) => profit + priceSwings[k]!);
  const sorted = values.slice().sort();
  const meanMinor = meanOfAll(profits);
  const variance = values.reduce((sum, value) => sum + (value - meanMinor) ** 2, 0) / Math.max(1, values.length - 1);
  const at = (p: number): number => sorted[Math.min(sorted.length - 1, Math.floor(p * sorted.length))]!;
  const [fromMinor, toMinor] = [sorted[0]!, sorted.at(-1)!];
  const shares = Array.from({ length: BARS }, () => 0);
  for (const value of values) {
    const bar = toMinor > fromMinor ? Math.min(BARS - 1, Math.floor(((value - fromMinor) / (toMinor - fromMinor)) * BARS)) : 0;
    shares[bar]! += 1 / values.length;
  }
  return {
    meanMinor,
    meanErrorMinor: 1.96 * Math.sqrt(variance / values.length),
    worstTenthMinor: worstTenth(values),
    quantilesMinor: [at(0.05), at(0.25), at(0.5), at(0.75), at(0.95)],
    bars: { fromMinor, toMinor, shares },
  };
}
