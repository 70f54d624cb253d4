import { randomStream } from '../../numeric/index.ts';
import { copyOf, idleChoice, type Choice } from './choice.ts';
import { climb } from './climb.ts';
import { combine } from './combine.ts';
import { iterate } from './iterate.ts';
import { modelWorth, softenedWorth } from './model-worth.ts';
import type { Problem } from './problem.ts';
import { riskAdjusted, simulate } from './simulate.ts';
import { Standing, type Aim, type WorthOf } from './standing.ts';

/** What an hour and money earn at the margin, from the linear relaxation: where the search starts. */
export interface Prices {
  readonly minuteMinor: number;
  readonly money: number;
}

export interface SearchOptions {
  readonly seed: string;
  readonly prices: Prices;
  readonly shouldStop: () => boolean;
  /** Further places to start from, such as the last plan. */
  readonly starts?: readonly Choice[];
  readonly worthOf?: WorthOf;
  /** There is a last plan among the starts that little has changed since: less is searched anew. */
  readonly again?: boolean;
}

/** How hard the search tries; tuned on seeds that no figure is measured on. */
interface Effort {
  /** Rounds of iterated search at the prices, at each further price, and within the limits. */
  readonly priced: number;
  readonly further: number;
  readonly limited: number;
  /** Outcomes to choose between candidates. */
  readonly outcomes: number;
  /** So many swaps of units are looked at in each round of a climb. */
  readonly swaps: number;
  /** Prices besides the given ones: so many dearer and so many cheaper. */
  readonly prices: number;
}

function effortFor(units: number, again: boolean): Effort {
  if (again) return { priced: 0, further: 0, limited: 15, outcomes: 1000, swaps: 40, prices: 0 };
  if (units <= 30) return { priced: 50, further: 4, limited: 20, outcomes: 2000, swaps: 40, prices: 4 };
  if (units <= 120) return { priced: 24, further: 3, limited: 20, outcomes: 1000, swaps: 40, prices: 3 };
  if (units <= 300) return { priced: 0, further: 0, limited: 20, outcomes: 500, swaps: 200, prices: 2 };
  return { priced: 0, further: 0, limited: 10, outcomes: 500, swaps: 200, prices: 1 };
}

/** Shares of the prices at which models are planned: some use more hours, some fewer. */
const DEARER = [1.2, 1.4, 1.8, 2.5] as const;
const CHEAPER = [0.8, 0.65, 0.5, 0.3] as const;
const SOFT = 0.25;

/**
 * The best choice found. At the prices of hours and money the models separate: each is planned from nothing, with softened chances first,
 * then with true ones, at several shares of the prices. Plans of models are put together to what fits the limits best, iterated, and the
 * best of the ways there is chosen by simulation, less risk as the person wishes.
 */
export function searchPlan(problem: Problem, options: SearchOptions): Choice {
  const { seed, starts = [] } = options;
  const effort = effortFor(problem.units.length, options.again ?? false);
  const plans = [...plansAtPrices(problem, options, effort), ...starts];
  const candidates = [plans[0]!, ...starts].map((start, i) => within(problem, options, start, plans, `${seed} within ${i}`, effort));
  return bestBySimulation(problem, [...plans, ...candidates], `${seed} choose`, effort.outcomes);
}

/** Choices at the prices and at shares of them; the first is at the prices themselves. */
function plansAtPrices(problem: Problem, { seed, prices, shouldStop, worthOf }: SearchOptions, effort: Effort): Choice[] {
  const random = randomStream(`${seed} priced`);
  const all = problem.models.map((_, m) => m);
  const priced = (share: number): Aim => ({
    ...trueAim(problem, 0, worthOf),
    minutePriceMinor: share * prices.minuteMinor,
    moneyPrice: share * prices.money,
  });
  const standing = new Standing(problem, idleChoice(problem), { ...priced(1), worthOf: worthOf ?? softenedWorth(SOFT) });
  climb(standing, all, random, shouldStop, effort.swaps);
  standing.aimAt(priced(1));
  climb(standing, all, random, shouldStop, effort.swaps);
  iterate(standing, effort.priced, random, shouldStop);
  const plans = [copyOf(standing.choice)];
  if (prices.minuteMinor === 0 && prices.money === 0) return plans;
  for (const shares of [DEARER, CHEAPER]) {
    const way = new Standing(problem, copyOf(plans[0]!), priced(1));
    for (const share of shares.slice(0, effort.prices)) {
      way.aimAt(priced(share));
      climb(way, all, random, shouldStop, effort.swaps);
      iterate(way, effort.further, random, shouldStop);
      plans.push(copyOf(way.choice));
    }
  }
  return plans;
}

/** A choice brought inside the limits and made as good as it gets there, other plans of single models being taken over. */
function within(problem: Problem, options: SearchOptions, start: Choice, plans: readonly Choice[], seed: string, effort: Effort): Choice {
  const { shouldStop, worthOf } = options;
  const random = randomStream(seed);
  const standing = new Standing(problem, copyOf(start), trueAim(problem, 0, worthOf));
  standing.aimAt(trueAim(problem, earnedAMinute(standing), worthOf));
  combine(standing, plans);
  climb(
    standing,
    problem.models.map((_, m) => m),
    random,
    shouldStop,
    effort.swaps,
  );
  iterate(standing, effort.limited, random, shouldStop);
  return standing.choice;
}

/** The candidate with the most simulated money, less risk; only those inside the limits count, and doing nothing is one. */
export function bestBySimulation(problem: Problem, candidates: readonly Choice[], seed: string, outcomes: number): Choice {
  let best = idleChoice(problem);
  let bestWorth = -Infinity;
  for (const choice of [best, ...candidates]) {
    if (!new Standing(problem, copyOf(choice), trueAim(problem, 0)).allowed()) continue;
    const worth = riskAdjusted(simulate(problem, choice, seed, outcomes).profits, problem.pile.wishes.riskShare);
    if (worth > bestWorth) [best, bestWorth] = [choice, worth];
  }
  return best;
}

/** What finishing units earns a minute where they are expected to be finished: what is lost where the time runs out. */
export function earnedAMinute(standing: Standing): number {
  let [gain, minutes] = [0, 0];
  standing.problem.models.forEach(({ buildMinutes }, m) => {
    const { gainMinor, built } = standing.worth(m);
    gain += gainMinor;
    minutes += built * buildMinutes;
  });
  return minutes > 0 ? gain / minutes : standing.problem.minuteMinor;
}

export function trueAim(problem: Problem, shortMinuteMinor: number, worthOf: WorthOf = modelWorth): Aim {
  const { riskShare } = problem.pile.wishes;
  return { shortMinuteMinor, minutePriceMinor: 0, moneyPrice: 0, riskShare, postage: true, worthOf };
}
