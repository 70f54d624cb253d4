import { randomStream } from '../../numeric/index.ts';
import { copyOf, idleChoice, type Choice } from './choice.ts';
import { climb } from './climb.ts';
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
}

/** How hard the search tries, by the number of units; tuned on seeds that no figure is measured on. */
export interface Effort {
  /** Rounds of iterated search for each candidate. */
  readonly rounds: number;
  /** Outcomes to choose between the candidates. */
  readonly outcomes: number;
}

/** Beyond so many units there is no iterated search: a climb is near enough to the bound, and long enough. */
const MOST_ITERATED = 120;

export function effortFor(units: number): Effort {
  if (units > MOST_ITERATED) return { rounds: 0, outcomes: 1000 };
  return { rounds: Math.round(Math.min(120, 2000 / Math.max(1, units))), outcomes: 2000 };
}

/** Shares of the prices at which units are first chosen, and of what a finished unit earns a minute for a minute too many. */
const TRIES = [
  { price: 1, short: 1 },
  { price: 0.7, short: 0.7 },
  { price: 1.2, short: 1.3 },
] as const;
const SOFT = 0.25;

/**
 * The best choice found: from nothing at the given prices with softened chances, then with true ones, then with the limits themselves;
 * iterated; the best of several such candidates by simulation, less risk as the person wishes.
 */
export function searchPlan(problem: Problem, options: SearchOptions): Choice {
  const effort = effortFor(problem.units.length);
  const tight = options.prices.minuteMinor > 0 || options.prices.money > 0;
  const candidates = (tight ? TRIES : TRIES.slice(0, 1)).map((each, i) =>
    candidate(problem, options, each, `${options.seed} ${i}`, effort.rounds),
  );
  for (const [i, start] of (options.starts ?? []).entries())
    candidates.push(improved(problem, options, start, `${options.seed} from ${i}`, effort.rounds));
  return bestBySimulation(problem, candidates, `${options.seed} choose`, effort.outcomes);
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

function candidate(
  problem: Problem,
  options: SearchOptions,
  { price, short }: (typeof TRIES)[number],
  seed: string,
  rounds: number,
): Choice {
  const { prices, shouldStop, worthOf } = options;
  const random = randomStream(seed);
  const priced: Aim = { ...trueAim(problem, 0, worthOf), minutePriceMinor: price * prices.minuteMinor, moneyPrice: price * prices.money };
  const standing = new Standing(problem, idleChoice(problem), { ...priced, worthOf: worthOf ?? softenedWorth(SOFT) });
  const all = problem.models.map((_, m) => m);
  climb(standing, all, random, shouldStop);
  standing.aimAt(priced);
  climb(standing, all, random, shouldStop);
  standing.aimAt(trueAim(problem, short * earnedAMinute(standing), worthOf));
  climb(standing, all, random, shouldStop);
  iterate(standing, rounds, random, shouldStop);
  return standing.choice;
}

/** A given choice made better; what no longer fits the limits is undone on the way. */
export function improved(problem: Problem, options: SearchOptions, start: Choice, seed: string, rounds: number): Choice {
  const random = randomStream(seed);
  const standing = new Standing(problem, copyOf(start), trueAim(problem, 0, options.worthOf));
  standing.aimAt(trueAim(problem, earnedAMinute(standing), options.worthOf));
  climb(
    standing,
    problem.models.map((_, m) => m),
    random,
    options.shouldStop,
  );
  iterate(standing, rounds, random, options.shouldStop);
  return standing.choice;
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
