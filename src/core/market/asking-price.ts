import { saleRate, type Demand } from './demand.ts';
import { MarketError } from './market-error.ts';

/** What selling costs and what else could be done; money in minor units. */
export interface Selling {
  /** What such a thing is worth in the market. */
  readonly fairMinor: number;
  /** What is left of a price after fees, postage and the reserve for returns. */
  readonly net: (priceMinor: number) => number;
  /** Space and money bound, for each day that it is on offer. */
  readonly waitMinorPerDay: number;
  /** What it brings when one gives up selling it so. */
  readonly giveUpMinor: number;
  /** What the next one costs to make, and in how many days it is ready, for what can be earned a month. */
  readonly costMinor: number;
  readonly makeDays: number;
}

export interface AskPoint {
  readonly askMinor: number;
  readonly netMinor: number;
  /** Days until half of such offers are sold. */
  readonly medianDays: number;
  /** Money a month when one after another is made and sold at that price. */
  readonly perMonthMinor: number;
}

const DAYS_A_MONTH = 30;

/** What asking each share of the fair price leads to. Renewal-reward theorem: mean money of one round over its mean length. */
export function askCurve(demand: Demand, selling: Selling, shares: readonly number[] = ASK_SHARES): AskPoint[] {
  return shares.map((share) => {
    const askMinor = share * selling.fairMinor;
    const rate = saleRate(demand, share);
    const netMinor = selling.net(askMinor);
    const round = netMinor - selling.costMinor - selling.waitMinorPerDay / rate;
    return {
      askMinor,
      netMinor,
      medianDays: Math.LN2 / rate,
      perMonthMinor: (DAYS_A_MONTH * round) / (selling.makeDays + 1 / rate),
    };
  });
}

/** Shares of the fair price that are looked at, 0.6 to 1.6. */
export const ASK_SHARES: readonly number[] = Array.from({ length: 101 }, (_, i) => 0.6 + i / 100);

/** The ask that earns most a month. Throws `MarketError` when there is none to choose from. */
export function bestAsk(curve: readonly AskPoint[]): AskPoint {
  const [first, ...rest] = curve;
  if (!first) throw new MarketError('no-asks', 'an asking price is chosen from at least one');
  return rest.reduce((best, point) => (point.perMonthMinor > best.perMonthMinor ? point : best), first);
}
