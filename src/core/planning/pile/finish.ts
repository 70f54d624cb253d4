import { inPool, type Choice } from './choice.ts';
import { complete } from './complete.ts';
import { luckOf } from './luck.ts';
import type { Leftover } from './pile.ts';
import { hashText, type Problem } from './problem.ts';

/** One assembly in one outcome: a thing of the pile, or the n-th copy of a part that fills a slot. */
export interface Placed {
  readonly slot: number;
  readonly thing: number | null;
  readonly fill: number | null;
  readonly copy: number;
  readonly works: boolean;
}

/** A unit that is finished: by slot what it holds; `body` is the unit that it keeps the originals of, null where they are mixed. */
export interface Finished {
  readonly model: number;
  readonly body: number | null;
  readonly holds: readonly Placed[];
}

export interface Outcome {
  readonly finished: readonly Finished[];
  readonly left: readonly { readonly model: number; readonly what: Placed; readonly done: 'sold' | 'kept' | 'scrapped' }[];
}

/** The second stage of one sampled outcome in full: which units are finished from what works, and what becomes of the rest. */
export function finishOutcome(problem: Problem, choice: Choice, minutesLeft: number, seed: string, k: number): Outcome {
  const seeded = hashText(seed);
  const pools = problem.models.map((_, m) => placedOf(problem, choice, m, seeded, k));
  const whole = problem.models.map((model) => model.units.filter((u) => isWhole(problem, choice, u, pools[problem.units[u]!.model]!)));
  const most = Int32Array.from(pools, (slots) => Math.min(...slots.map((slot) => slot.filter(({ works }) => works).length)));
  const built = new Int32Array(problem.models.length);
  complete(
    problem,
    most,
    Int32Array.from(whole, ({ length }) => length),
    Math.max(0, minutesLeft),
    built,
  );
  const finished = problem.models.flatMap((_, m) => match(problem, m, built[m]!, whole[m]!, pools[m]!));
  const used = new Set(finished.flatMap(({ holds }) => holds));
  const left = pools.flatMap((slots, model) =>
    slots.flatMap((slot, s) =>
      slot.filter((what) => !used.has(what)).map((what) => ({ model, what, done: bestOf(problem, model, s, what.works) })),
    ),
  );
  return { finished, left };
}

function placedOf(problem: Problem, choice: Choice, m: number, seed: number, k: number): Placed[][] {
  return problem.models[m]!.pools.map(({ things, fills }, slot) => [
    ...things
      .filter((t) => inPool(problem, choice, t))
      .map((thing) => {
        const { options, luck } = problem.things[thing]!;
        return { slot, thing, fill: null, copy: 0, works: luckOf(seed, luck, k) < options[choice.option[thing]!]!.chance };
      }),
    ...fills.flatMap((fill) =>
      Array.from({ length: choice.fill[fill]! }, (_, copy) => {
        const { chance, luck } = problem.fills[fill]!;
        return { slot, thing: null, fill, copy, works: luckOf(seed, hashText(`${luck} ${copy}`), k) < chance };
      }),
    ),
  ]);
}

function isWhole({ units }: Problem, choice: Choice, u: number, pools: readonly (readonly Placed[])[]): boolean {
  const { pair } = units[u]!;
  return (
    choice.open[u] === 1 && pair !== null && pair.every((t) => pools.some((slot) => slot.some(({ thing, works }) => thing === t && works)))
  );
}

/** Whole originals first; then each unit takes what works of its own and the rest from what is left in the pool. */
function match(problem: Problem, m: number, count: number, whole: readonly number[], pools: readonly (readonly Placed[])[]): Finished[] {
  const { original } = problem.models[m]!;
  const free = pools.map((slot) => slot.filter(({ works }) => works));
  const ownIn = (u: number, slot: number): Placed | undefined =>
    free[slot]!.find(({ thing }) => thing !== null && problem.things[thing]!.unit === u);
  const working = (u: number): number => free.reduce((sum, _, s) => sum + (ownIn(u, s) ? 1 : 0), 0);
  const bodies = problem.models[m]!.units.filter((u) => free.some((_, s) => ownIn(u, s)));
  const chosen = [
    ...whole.toSorted((a, b) => working(b) - working(a)),
    ...bodies.filter((u) => !whole.includes(u)).sort((a, b) => working(b) - working(a)),
  ].slice(0, count);
  const holds = Array.from({ length: count }, () => [] as Placed[]);
  pools.forEach((_, s) => {
    const rest: number[] = [];
    holds.forEach((hold, i) => {
      const own = i < chosen.length ? ownIn(chosen[i]!, s) : undefined;
      if (!own) return void rest.push(i);
      free[s]!.splice(free[s]!.indexOf(own), 1);
      hold[s] = own;
    });
    for (const i of rest) {
      // What no other chosen whole unit has as its own goes first; those have taken theirs already.
      holds[i]![s] = free[s]!.shift()!;
    }
  });
  return holds.map((hold, i) => {
    const body =
      i < chosen.length &&
      whole.includes(chosen[i]!) &&
      original.every((s) => hold[s]!.thing !== null && problem.things[hold[s]!.thing!]!.unit === chosen[i]);
    return { model: m, body: body ? chosen[i]! : null, holds: hold };
  });
}

function bestOf({ pile }: Problem, m: number, s: number, works: boolean): 'sold' | 'kept' | 'scrapped' {
  const slot = pile.models[m]!.slots[s]!;
  const { soldMinor, keptMinor, scrapMinor }: Leftover = works ? slot.works : slot.failed;
  if (soldMinor >= keptMinor && soldMinor >= scrapMinor) return 'sold';
  return keptMinor >= scrapMinor ? 'kept' : 'scrapped';
}

/** What an outcome earns, added up thing by thing: finished units and leftovers, the minutes of finishing charged. */
export function worthOfOutcome(problem: Problem, { finished, left }: Outcome): number {
  const { models, pile, minuteMinor } = problem;
  const soldOf = new Int32Array(models.length);
  let money = 0;
  for (const { model, body } of finished) {
    const { soldMinor, eachFurther, moreMinor, buildMinutes } = models[model]!;
    money += soldMinor * eachFurther ** soldOf[model]!++ + (body === null ? 0 : moreMinor) - buildMinutes * minuteMinor;
  }
  for (const { model, what, done } of left) {
    const slot = pile.models[model]!.slots[what.slot]!;
    const worth = what.works ? slot.works : slot.failed;
    money += done === 'sold' ? worth.soldMinor : done === 'kept' ? worth.keptMinor : worth.scrapMinor;
  }
  return money;
}
