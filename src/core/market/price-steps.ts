import { ASK_SHARES, type Selling } from './asking-price.ts';
import { saleRate, type Demand } from './demand.ts';

export interface PriceStep {
  /** Weeks that it has been on offer without being sold. */
  readonly week: number;
  readonly askMinor: number;
  /** What the offer is worth then: a bid that leaves more after fees is better taken than waited past. */
  readonly worthMinor: number;
}

const DAYS = 7;
/** Points on the scale of demand used up, and how far it goes, in sales that were to be expected. */
const GRID = 60;
const MOST_EXPECTED = 12;

/**
 * What to ask week by week while nothing is sold, so that most money is left: dynamic programming backwards from the week in which one gives up.
 * How many buyers there are is not certain (gamma belief of the demand's weight): each week without a sale says that there are fewer, so the price steps down.
 * The chance to sell within a week is 1 − ((k + H)/(k + H + h))^k, k the weight, H the sales that were to be expected so far, h those of the week.
 */
export function priceSteps(demand: Demand, selling: Selling, weeks = 26): PriceStep[] {
  const asks = ASK_SHARES.filter((_, i) => i % 2 === 0).map((share) => ({
    askMinor: share * selling.fairMinor,
    netMinor: selling.net(share * selling.fairMinor),
    expected: DAYS * saleRate(demand, share),
  }));
  const best = decideBackwards(asks, demand.weight, selling, weeks);
  const steps: PriceStep[] = [];
  let used = 0;
  for (let week = 0; week < weeks; week++) {
    const { ask, worth } = best(week, used);
    steps.push({ week, askMinor: asks[ask]!.askMinor, worthMinor: worth });
    used += asks[ask]!.expected;
  }
  return steps;
}

interface Ask {
  readonly netMinor: number;
  readonly expected: number;
}

type Choice = { readonly ask: number; readonly worth: number };

function decideBackwards(asks: readonly Ask[], k: number, selling: Selling, weeks: number): (week: number, used: number) => Choice {
  const usedAt = Array.from({ length: GRID + 1 }, (_, g) => (MOST_EXPECTED * g) / GRID);
  const values: Float64Array[] = [new Float64Array(GRID + 1).fill(selling.giveUpMinor)];
  const choose = (used: number, later: Float64Array): Choice => {
    let best: Choice = { ask: 0, worth: -Infinity };
    asks.forEach(({ netMinor, expected }, ask) => {
      const stays = ((k + used) / (k + used + expected)) ** k;
      const worth = (1 - stays) * netMinor + stays * at(later, used + expected) - selling.waitMinorPerDay * DAYS;
      if (worth > best.worth) best = { ask, worth };
    });
    return best.worth >= selling.giveUpMinor ? best : { ...best, worth: selling.giveUpMinor };
  };
  for (let left = 1; left <= weeks; left++) values.push(Float64Array.from(usedAt, (used) => choose(used, values[left - 1]!).worth));
  return (week, used) => choose(used, values[weeks - week - 1]!);
}

/** Between the points of the grid, straight; beyond its end, the end. */
function at(values: Float64Array, used: number): number {
  const place = Math.min(GRID, (used * GRID) / MOST_EXPECTED);
  const low = Math.min(GRID - 1, Math.floor(place));
  return values[low]! + (place - low) * (values[low + 1]! - values[low]!);
}
