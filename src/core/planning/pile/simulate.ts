import { bestBaskets } from './basket.ts';
import { inPool, type Choice } from './choice.ts';
import { complete } from './complete.ts';
import { luckOf, normalFrom } from './luck.ts';
import { hashText, type Problem } from './problem.ts';
import { PlanningError } from '../planning-error.ts';

export interface Simulated {
  /** Profit in each outcome, minor units, prices as expected. */
  readonly profits: Float64Array;
  /** Minutes worked in each. */
  readonly minutes: Float64Array;
  /** Units finished in each, all models together. */
  readonly built: Float64Array;
  /** What prices may add or take in each: one factor for each model. */
  readonly priceSwings: Float64Array;
}

/** What is done with a choice, reckoned once for all outcomes. */
interface Prepared {
  readonly fixed: number;
  readonly minutes: number;
  readonly sd: number;
  /** By model and slot: what may work: chance, and own luck. */
  readonly pools: readonly (readonly { readonly chances: Float64Array; readonly lucks: Int32Array; readonly sure: number }[])[];
  readonly pairs: readonly (readonly (readonly { readonly chance: number; readonly luck: number }[])[])[];
}

/**
 * What becomes of a choice in so many sampled outcomes, with the second stage solved in each and the hours as a hard limit. The
 * luck of a thing is its own: two choices with the same seed meet the same outcomes.
 */
export function simulate(problem: Problem, choice: Choice, seed: string, outcomes: number): Simulated {
  const prepared = prepare(problem, choice);
  const [profits, minutes, builtIn, priceSwings] = [0, 1, 2, 3].map(() => new Float64Array(outcomes)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const { models, minuteMinor } = problem;
  const [most, pairs, built] = [0, 1, 2].map(() => new Int32Array(models.length)) as [Int32Array, Int32Array, Int32Array];
  const seeded = hashText(seed);
  const clocks = hashText(`${seed} minutes`);
  for (let k = 0; k < outcomes; k++) {
    let money = prepared.fixed;
    for (let m = 0; m < models.length; m++) money += countPools(problem, prepared, m, seeded, k, most, pairs);
    const now = prepared.minutes + (prepared.sd > 0 ? prepared.sd * normalFrom(luckOf(clocks, 1, k), luckOf(clocks, 2, k)) : 0);
    const left = Math.max(0, problem.pile.limits.minutes - now);
    money += complete(problem, most, pairs, left, built) - (now - prepared.minutes) * minuteMinor;
    profits[k] = money;
    minutes[k] = now;
    for (let m = 0; m < models.length; m++) {
      const model = models[m]!;
      minutes[k]! += built[m]! * model.buildMinutes;
      builtIn[k]! += built[m]!;
      if (model.priceSpread > 0 && built[m]! > 0) {
        const luck = hashText(`price of ${model.id}`);
        const z = normalFrom(luckOf(seeded, luck, 2 * k), luckOf(seeded, luck, 2 * k + 1));
        priceSwings[k]! += built[m]! * model.soldMinor * (Math.exp(model.priceSpread * z - model.priceSpread ** 2 / 2) - 1);
      }
    }
  }
  return { profits, minutes, built: builtIn, priceSwings };
}

/** Counts what works of model m in outcome k into `most` and `pairs`; the worth of all as leftovers comes out. */
function countPools(problem: Problem, prepared: Prepared, m: number, seed: number, k: number, most: Int32Array, pairs: Int32Array): number {
  const model = problem.models[m]!;
  let [least, money] = [Infinity, 0];
  const pools = prepared.pools[m]!;
  for (let s = 0; s < pools.length; s++) {
    const { chances, lucks, sure } = pools[s]!;
    let works = sure;
    for (let i = 0; i < chances.length; i++) if (luckOf(seed, lucks[i]!, k) < chances[i]!) works++;
    money += works * (model.leftWorks[s]! - model.leftFailed[s]!);
    if (works < least) least = works;
  }
  most[m] = least === Infinity ? 0 : least;
  let whole = 0;
  for (const pair of prepared.pairs[m]!) if (pair.every(({ chance, luck }) => luckOf(seed, luck, k) < chance)) whole++;
  pairs[m] = whole;
  return money;
}

function prepare(problem: Problem, choice: Choice): Prepared {
  const { models, units, things, fills, minuteMinor } = problem;
  const needs = new Int32Array(problem.parts.length);
  let [fixed, minutes, variance] = [0, 0, 0];
  units.forEach((unit, u) => {
    if (choice.open[u]) minutes += unit.openMinutes;
    else fixed += unit.asIsMinor;
  });
  const lists = models.map(({ slots }) => slots.map(() => ({ chances: [] as number[], lucks: [] as number[], sure: 0 })));
  const add = (m: number, s: number, chance: number, luck: number): void => {
    fixed += models[m]!.leftFailed[s]!;
    const list = lists[m]![s]!;
    if (chance >= 1) list.sure++;
    else if (chance > 0) {
      list.chances.push(chance);
      list.lucks.push(luck);
    }
  };
  things.forEach((thing, t) => {
    if (!inPool(problem, choice, t)) return;
    const option = thing.options[choice.option[t]!]!;
    add(thing.model, thing.slot, option.chance, thing.luck);
    fixed -= option.costMinor;
    minutes += option.minutes;
    variance += option.variance;
    for (const [part, n] of option.needs) needs[part]! += n;
  });
  choice.fill.forEach((count, f) => {
    const fill = fills[f]!;
    for (let i = 0; i < count; i++) add(fill.model, fill.slot, fill.chance, hashText(`${fill.luck} ${i}`));
    minutes += count * fill.minutes;
    needs[fill.part]! += count;
  });
  const orders = bestBaskets(problem, needs);
  if (!orders) throw new PlanningError('bad-choice', 'a choice needs a part that neither the drawer nor a supplier has');
  fixed += orders.leftMinor - orders.costMinor - orders.waitMinor - minutes * minuteMinor;
  return {
    fixed,
    minutes,
    sd: Math.sqrt(variance),
    pools: lists.map((slots) =>
      slots.map(({ chances, lucks, sure }) => ({ chances: Float64Array.from(chances), lucks: Int32Array.from(lucks), sure })),
    ),
    pairs: models.map((model) => (model.moreMinor > 0 ? pairsOf(problem, choice, model.units) : [])),
  };
}

function pairsOf(problem: Problem, choice: Choice, units: readonly number[]): { chance: number; luck: number }[][] {
  return units.flatMap((u) => {
    const { pair } = problem.units[u]!;
    if (!pair || choice.open[u] !== 1) return [];
    const members = pair.map((t) => {
      const { options, luck } = problem.things[t]!;
      return { chance: options[choice.option[t]!]!.chance, luck };
    });
    return members.some(({ chance }) => chance <= 0) ? [] : [members];
  });
}

/** The arithmetic mean. */
export const meanOfAll = (values: Float64Array): number => values.reduce((a, b) => a + b, 0) / values.length;

/** Mean of the worst tenth. */
export function worstTenth(values: Float64Array): number {
  const sorted = values.slice().sort();
  const count = Math.max(1, Math.floor(sorted.length / 10));
  return meanOfAll(sorted.subarray(0, count));
}

/** Mean, less the share that the person wants of what the worst tenth falls short of it. */
export function riskAdjusted(values: Float64Array, riskShare: number): number {
  const mean = meanOfAll(values);
  return riskShare === 0 ? mean : mean - riskShare * (mean - worstTenth(values));
}
