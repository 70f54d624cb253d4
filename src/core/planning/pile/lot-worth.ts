import { randomStream, type RandomStream } from '../../numeric/index.ts';
import type { PileItem } from './pile.ts';
import { simulate } from './simulate.ts';
import { winnersBias, winnersError } from './winners-curse.ts';
import { worthOfMore, type Base } from './worth-of-more.ts';

/** What a lot is worth to this pile in one state that it may turn out to be in. */
export interface LotState {
  /** What the pile then brings more, in one outcome of the work. */
  readonly worthMinor: number;
  /** The same on average over outcomes. */
  readonly expectedMinor: number;
  /** Further minutes of work that are expected. */
  readonly minutes: number;
}

/**
 * The worth of a lot over sampled states: in each, what is wrong with every assembly is drawn from its chances and known when the plan with
 * the lot is made; from it the plan without is taken. `shouldStop` leaves the list as long as it is by then.
 */
export function lotStates(
  base: Base,
  lot: readonly PileItem[],
  seed: string,
  count: number,
  shouldStop: () => boolean = () => false,
): LotState[] {
  const random = randomStream(`lot ${seed}`);
  const without = simulate(base.problem, base.choice, seed, count).profits;
  const states: LotState[] = [];
  for (let k = 0; k < count && !shouldStop(); k++) {
    const { worthMinor, minutes, problem, choice } = worthOfMore(
      base,
      lot.map((item) => revealed(item, random)),
    );
    const outcome = simulate(problem, choice, seed, k + 1).profits[k]!;
    states.push({ worthMinor: outcome - without[k]!, expectedMinor: worthMinor, minutes });
  }
  return states;
}

/** An item with the state of each assembly drawn and known; what a remedy does to a known fault stays open. */
export function revealed(item: PileItem, random: RandomStream): PileItem {
  return {
    ...item,
    assemblies: item.assemblies.map((assembly) => {
      let at = random();
      const classes = Object.entries(assembly.faults);
      const found = classes.find(([, chance]) => (at -= chance) < 0) ?? classes.at(-1)!;
      return { ...assembly, faults: { [found[0]]: 1 } };
    }),
  };
}

export interface CeilingWishes {
  /** Chance of losing money on the lot that is still accepted. */
  readonly lossChance: number;
  /** What an hour of work must bring, the cost of the hour counted as earned. */
  readonly perHourMinor: number;
  /** How far off the valuation may be, evenly to both sides, and how many bid on such guesses, oneself among them. */
  readonly errorMinor: number;
  readonly bidders: number;
}

export interface Ceiling {
  /** The most to pay, all costs of buying included; 0 where no price is low enough. */
  readonly ceilingMinor: number;
  readonly byLossMinor: number;
  readonly byHourMinor: number;
  readonly curve: readonly PricePoint[];
}

/** What to expect when the lot is bought at a price. */
export interface PricePoint {
  readonly priceMinor: number;
  readonly profitMinor: number;
  readonly lossChance: number;
  /** Null where the lot makes no work. */
  readonly perHourMinor: number | null;
}

const POINTS = 25;

/**
 * The ceiling price of a lot from its sampled states. Whoever buys among several bidders has likely guessed too high, so from each state the
 * error of the highest of their guesses, drawn anew, is taken off. By loss: the k-th smallest of n worths is undercut by a further one with chance
 * k / (n + 1), whatever the distribution, so k = ⌊lossChance · (n + 1)⌋. `seed`: one for each lot.
 */
export function ceilingOf(states: readonly LotState[], wishes: CeilingWishes, hourMinor: number, seed: string): Ceiling {
  const random = randomStream(`ceiling ${seed}`);
  const worths = states.map(({ worthMinor }) => worthMinor - winnersError(wishes.errorMinor, wishes.bidders, random()));
  const mean = average(states.map(({ expectedMinor }) => expectedMinor)) - winnersBias(wishes.errorMinor, wishes.bidders);
  const hours = Math.max(0, average(states.map(({ minutes }) => minutes)) / 60);
  const sorted = worths.toSorted((a, b) => a - b);
  const k = Math.floor(wishes.lossChance * (sorted.length + 1) + 1e-9);
  const byLossMinor = k >= 1 ? sorted[Math.min(sorted.length, k) - 1]! : -Infinity;
  const byHourMinor = mean + (hourMinor - wishes.perHourMinor) * hours;
  const at = (priceMinor: number): PricePoint => ({
    priceMinor,
    profitMinor: mean - priceMinor,
    lossChance: sorted.filter((worth) => worth < priceMinor).length / sorted.length,
    perHourMinor: hours > 0 ? (mean - priceMinor) / hours + hourMinor : null,
  });
  const top = Math.max(0, sorted.at(-1) ?? 0) * 1.1;
  return {
    ceilingMinor: Math.max(0, Math.min(byLossMinor, byHourMinor)),
    byLossMinor,
    byHourMinor,
    curve: Array.from({ length: POINTS }, (_, i) => at((top * i) / (POINTS - 1))),
  };
}

const average = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
