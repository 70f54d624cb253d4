import { basketSums, bestBaskets, type Baskets, type BasketSums } from './basket.ts';
import type { Choice } from './choice.ts';
import { modelWorth, type ModelWorth } from './model-worth.ts';
import { expectedExcess } from './normal-loss.ts';
import type { Problem } from './problem.ts';
import { tailsOf, type Tails } from './tails.ts';

/** Mean less the mean of the worst tenth of a normal variable, in standard deviations: φ(z₀.₉) / 0.1. */
const WORST_TENTH = 1.755;
/** Each minor unit or minute beyond a limit costs so much, so that the search finds its way back inside. */
const OVER = 20;
/** Each part that nobody has, likewise. */
const MISSING = 1e7;

/** Replaces the exact expectation of a model; for plans made in other ways. */
export type WorthOf = typeof modelWorth;

export interface Aim {
  /** What a minute beyond the limit costs in outcomes where the time runs out: units stay unfinished. */
  readonly shortMinuteMinor: number;
  /** Price of every minute and every unit of money that is used, on top of what they cost: what the next best use would earn. */
  readonly minutePriceMinor: number;
  readonly moneyPrice: number;
  readonly riskShare: number;
  /** False: as if no order cost postage, to get started. */
  readonly postage: boolean;
  readonly worthOf: WorthOf;
}

export interface Fixed {
  readonly units: ReadonlySet<number>;
  readonly things: ReadonlySet<number>;
}

export const NOTHING_FIXED: Fixed = { units: new Set(), things: new Set() };

/** Sums over what is decided, in the order in which they add up. */
interface Sums {
  /** Leftovers, units sold as they are, less remedies and minutes. */
  fixed: number;
  cash: number;
  minutes: number;
  variance: number;
}

/**
 * A choice with everything that its worth is made of, kept up to date change by change. `score` is the expected profit less
 * what the risk and the lack of hours cost, and much less where a limit is broken.
 */
export class Standing {
  readonly needs: Int32Array;
  private sums: Sums = { fixed: 0, cash: 0, minutes: 0, variance: 0 };
  private readonly pools: (Tails | null)[][];
  private readonly pairs: (Tails | null)[];
  private readonly worths: (ModelWorth | null)[];
  private baskets: BasketSums | null | undefined;

  constructor(
    readonly problem: Problem,
    readonly choice: Choice,
    private aiming: Aim,
    /** What may not be changed: units (opened or not) and things (their option). */
    readonly fixed: Fixed = NOTHING_FIXED,
  ) {
    this.needs = new Int32Array(problem.parts.length);
    this.pools = problem.models.map(({ slots }) => slots.map(() => null));
    this.pairs = problem.models.map(() => null);
    this.worths = problem.models.map(() => null);
    this.sumUp();
  }

  /** Adds everything up from nothing. */
  private sumUp(): void {
    const { problem, choice } = this;
    this.sums = { fixed: 0, cash: 0, minutes: 0, variance: 0 };
    this.needs.fill(0);
    problem.units.forEach((_, u) => (choice.open[u] ? this.addOpening(u, 1) : this.addAsIs(u, 1)));
    problem.things.forEach((thing, t) => {
      if (thing.unit < 0 || choice.open[thing.unit]) this.addThing(t, 1);
    });
    choice.fill.forEach((count, f) => this.addFill(f, count));
  }

  private addAsIs(u: number, sign: number): void {
    this.sums.fixed += sign * this.problem.units[u]!.asIsMinor;
  }

  private addOpening(u: number, sign: number): void {
    const { openMinutes } = this.problem.units[u]!;
    this.sums.minutes += sign * openMinutes;
    this.sums.fixed -= sign * openMinutes * this.problem.minuteMinor;
  }

  private addThing(t: number, sign: number): void {
    const thing = this.problem.things[t]!;
    const option = thing.options[this.choice.option[t]!]!;
    const { leftWorks, leftFailed } = this.problem.models[thing.model]!;
    const left = option.chance * leftWorks[thing.slot]! + (1 - option.chance) * leftFailed[thing.slot]!;
    this.sums.fixed += sign * (left - option.costMinor - option.minutes * this.problem.minuteMinor);
    this.sums.cash += sign * option.costMinor;
    this.sums.minutes += sign * option.minutes;
    this.sums.variance += sign * option.variance;
    if (option.needs.length > 0) {
      for (const [part, n] of option.needs) this.needs[part]! += sign * n;
      this.baskets = undefined;
    }
    this.touch(thing.model, thing.slot);
  }

  private addFill(f: number, count: number): void {
    if (count === 0) return;
    const fill = this.problem.fills[f]!;
    const { leftWorks, leftFailed } = this.problem.models[fill.model]!;
    const left = fill.chance * leftWorks[fill.slot]! + (1 - fill.chance) * leftFailed[fill.slot]!;
    this.sums.fixed += count * (left - fill.minutes * this.problem.minuteMinor);
    this.sums.minutes += count * fill.minutes;
    this.needs[fill.part]! += count;
    this.baskets = undefined;
    this.touch(fill.model, fill.slot);
  }

  private touch(model: number, slot: number): void {
    this.pools[model]![slot] = null;
    this.worths[model] = null;
    if (this.problem.models[model]!.original.includes(slot)) this.pairs[model] = null;
  }

  setOption(t: number, option: number): void {
    const { unit } = this.problem.things[t]!;
    const counts = unit < 0 || this.choice.open[unit] === 1;
    if (counts) this.addThing(t, -1);
    this.choice.option[t] = option;
    if (counts) this.addThing(t, 1);
  }

  setOpen(u: number, open: boolean): void {
    if ((this.choice.open[u] === 1) === open) return;
    const sign = open ? 1 : -1;
    this.addAsIs(u, -sign);
    this.addOpening(u, sign);
    for (const t of this.problem.units[u]!.things) this.addThing(t, sign);
    this.choice.open[u] = open ? 1 : 0;
  }

  setFill(f: number, count: number): void {
    this.addFill(f, count - this.choice.fill[f]!);
    this.choice.fill[f] = count;
  }

  get aim(): Aim {
    return this.aiming;
  }

  /** The same choice, judged by something else. */
  aimAt(aim: Aim): void {
    if (aim.worthOf !== this.aiming.worthOf) this.worths.fill(null);
    this.aiming = aim;
  }

  /** By slot of a model, how many will work. */
  poolTails(m: number): readonly Tails[] {
    const { pools } = this.problem.models[m]!;
    const cached = this.pools[m]!;
    for (let s = 0; s < pools.length; s++) cached[s] ??= this.tailsOfPool(pools[s]!.things, pools[s]!.fills);
    return cached as Tails[];
  }

  private tailsOfPool(things: readonly number[], fills: readonly number[]): Tails {
    const chances: number[] = [];
    const { problem, choice } = this;
    for (const t of things) {
      const thing = problem.things[t]!;
      if (thing.unit < 0 || choice.open[thing.unit] === 1) chances.push(thing.options[choice.option[t]!]!.chance);
    }
    for (const f of fills) for (let i = choice.fill[f]!; i > 0; i--) chances.push(problem.fills[f]!.chance);
    return tailsOf(chances);
  }

  /** How many units will be whole in their original slots; null where that earns nothing. */
  private pairTails(m: number): Tails | null {
    const model = this.problem.models[m]!;
    if (model.moreMinor <= 0) return null;
    return (this.pairs[m] ??= tailsOf(
      model.units.flatMap((u) => {
        const { pair } = this.problem.units[u]!;
        if (!pair || this.choice.open[u] !== 1) return [];
        return [pair.reduce((chance, t) => chance * this.problem.things[t]!.options[this.choice.option[t]!]!.chance, 1)];
      }),
    ));
  }

  worth(m: number): ModelWorth {
    return (this.worths[m] ??= this.reckon(m));
  }

  private reckon(m: number): ModelWorth {
    const tails = this.poolTails(m);
    return this.aiming.worthOf(this.problem.models[m]!, tails, this.pairTails(m), this.problem.minuteMinor);
  }

  /** Everything that is kept up to date, to come back to after a change of these models that did not help. */
  remember(models: readonly number[]): () => void {
    const { sums, baskets } = this;
    const { fixed, cash, minutes, variance } = sums;
    const needs = this.needs.slice();
    const caches = models.map((m) => ({ m, pools: this.pools[m]!.slice(), pairs: this.pairs[m]!, worth: this.worths[m]! }));
    return () => {
      this.sums = { fixed, cash, minutes, variance };
      this.baskets = baskets;
      this.needs.set(needs);
      for (const { m, pools, pairs, worth } of caches) {
        this.pools[m] = pools;
        this.pairs[m] = pairs;
        this.worths[m] = worth;
      }
    };
  }

  /** The orders; null where something is needed that nobody has. */
  orders(): Baskets | null {
    return bestBaskets(this.problem, this.needs);
  }

  private sumsOfOrders(): BasketSums | null {
    if (this.baskets === undefined) this.baskets = basketSums(this.problem, this.needs);
    return this.baskets;
  }

  /** Money that leaves now. */
  cashMinor(): number {
    return this.sums.cash + (this.sumsOfOrders()?.costMinor ?? Infinity);
  }

  /** Minutes of work before outcomes are known. */
  minutesNow(): number {
    return this.sums.minutes;
  }

  minutesVariance(): number {
    return this.sums.variance;
  }

  /** Whether money and minutes spent now stay inside the limits. */
  allowed(): boolean {
    const { moneyMinor, minutes } = this.problem.pile.limits;
    return this.cashMinor() <= moneyMinor + 1e-6 && this.minutesNow() <= minutes + 1e-6;
  }

  /** What everything brings that is not the gain from completing units. */
  besidesMinor(): number {
    const orders = this.sumsOfOrders();
    return orders ? this.sums.fixed + orders.leftMinor - orders.costMinor - orders.waitMinor : -Infinity;
  }

  /** Expected profit if hours never ran out. */
  profitMinor(): number {
    let sum = this.besidesMinor();
    for (let m = 0; m < this.problem.models.length; m++) sum += this.worth(m).gainMinor;
    return sum;
  }

  score(): number {
    const orders = this.sumsOfOrders();
    const { models, pile } = this.problem;
    const besides = orders ? this.besidesMinor() : this.sums.fixed - MISSING * missingParts(this.problem, this.needs);
    let [value, minutes, minutesVariance, variance] = [besides, this.sums.minutes, this.sums.variance, 0];
    for (let m = 0; m < models.length; m++) {
      const worth = this.worth(m);
      const { buildMinutes } = models[m]!;
      value += worth.gainMinor;
      variance += worth.variance;
      minutes += worth.built * buildMinutes;
      minutesVariance += worth.builtVariance * buildMinutes * buildMinutes;
    }
    if (orders && !this.aiming.postage) value += orders.perOrderMinor;
    const { limits } = pile;
    value -= this.aiming.minutePriceMinor * minutes + this.aiming.moneyPrice * (this.sums.cash + (orders?.costMinor ?? 0));
    value -= this.aiming.shortMinuteMinor * expectedExcess(minutes, minutesVariance, limits.minutes);
    value -= this.aiming.riskShare * WORST_TENTH * Math.sqrt(variance);
    const overMoney = Math.max(0, this.sums.cash + (orders?.costMinor ?? 0) - limits.moneyMinor);
    return value - OVER * (overMoney + Math.max(0, this.sums.minutes - limits.minutes) * this.problem.minuteMinor);
  }
}

/** How many parts are needed that neither the drawer nor any supplier has. */
function missingParts({ parts }: Problem, needs: Int32Array): number {
  return parts.reduce((sum, { stock, offers }, p) => (offers.every((offer) => !offer) ? sum + Math.max(0, needs[p]! - stock) : sum), 0);
}
