import { idleChoice, type Choice } from './choice.ts';
import { likelyOption } from './promise.ts';
import { attempt, EPSILON, make, type Change } from './changes.ts';
import { modelWorth } from './model-worth.ts';
import { problemOf, type Problem } from './problem.ts';
import { Standing, type Aim } from './standing.ts';
import type { Pile, PileItem } from './pile.ts';

/** The obvious policy as a choice in a pile of its own, in which no assembly can leave its unit. */
export interface AlonePlan {
  readonly problem: Problem;
  readonly choice: Choice;
}

const AIM: Aim = { shortMinuteMinor: 0, minutePriceMinor: 0, moneyPrice: 0, riskShare: 0, postage: false, worthOf: modelWorth };

/** How far beyond the limit candidates are considered, as some will not fit. */
const BEYOND = 1.5;

/**
 * What the obvious policy does: each unit by itself gets the remedies and parts that pay for it, the most profitable per
 * minute first, until money or hours run out; nothing moves between units. Orders are put together. Loose assemblies stay out.
 */
export function planAlone(pile: Pile): AlonePlan {
  const units = pile.items.filter((item) => item.whole && !item.keep);
  const ranked = units
    .map((item) => unitAlone(pile, item))
    .filter(({ gain }) => gain > 0)
    .sort((a, b) => b.gain / Math.max(1, b.minutes) - a.gain / Math.max(1, a.minutes));
  let reached = 0;
  const candidates = ranked.filter(({ minutes }) => (reached += minutes) - minutes <= BEYOND * pile.limits.minutes);
  const problem = problemOf(pileApart(pile, new Set(candidates.map(({ item }) => item.id))));
  const standing = new Standing(problem, idleChoice(problem), AIM);
  let used = 0;
  for (const candidate of candidates) {
    if (used + candidate.minutes > pile.limits.minutes) continue;
    take(standing, candidate, true);
    if (standing.allowed()) used += candidate.minutes;
    else take(standing, candidate, false);
  }
  return { problem, choice: standing.choice };
}

interface UnitAlone {
  readonly item: PileItem;
  readonly gain: number;
  readonly minutes: number;
  readonly options: readonly number[];
  /** By the fills of its own model, in their order. */
  readonly fills: readonly number[];
}

/** The best that can be done for one unit that is all there is; postage not counted, as orders go together. */
function unitAlone(pile: Pile, item: PileItem): UnitAlone {
  const problem = problemOf(
    pileApart({ ...pile, items: [item], models: pile.models.filter(({ id }) => id === item.model) }, new Set([item.id])),
  );
  const standing = new Standing(problem, idleChoice(problem), AIM);
  const idle = standing.score();
  const { things } = problem.units[0]!;
  make(standing, { set: 'open', at: 0, to: 1 });
  for (const t of things) make(standing, { set: 'option', at: t, to: likelyOption(problem, t) });
  for (const f of firstOfHopelessSlots(problem)) make(standing, { set: 'fill', at: f, to: 1 });
  let score = standing.score();
  for (let before = -Infinity; score > before + EPSILON;) {
    before = score;
    for (const changes of stepsAlone(problem, standing.choice)) score = attempt(standing, changes, score);
  }
  const { choice } = standing;
  return {
    item,
    gain: score - idle,
    minutes: standing.minutesNow() + standing.worth(0).built * problem.models[0]!.buildMinutes,
    options: things.map((t) => choice.option[t]!),
    fills: [...choice.fill],
  };
}

/** Another option, a part put in or left out, and both at once in the same slot. */
function stepsAlone({ things, fills }: Problem, { fill }: Choice): Change[][] {
  const toggle = (f: number): Change => ({ set: 'fill', at: f, to: fill[f]! > 0 ? 0 : 1 });
  return [
    ...things.flatMap(({ options, slot }, at) =>
      options.flatMap((_, to) => {
        const option: Change = { set: 'option', at, to };
        return [[option], ...fills.flatMap((each, f) => (each.slot === slot ? [[option, toggle(f)]] : []))];
      }),
    ),
    ...fills.map((_, f) => [toggle(f)]),
  ];
}

/** For each slot that is empty or beyond help, the first part that fills it. */
function firstOfHopelessSlots({ things, fills }: Problem): number[] {
  const hopeful = new Set(things.filter(({ options }) => options.some(({ chance }) => chance > 0)).map(({ slot }) => slot));
  return fills.flatMap(({ slot }, f) => (!hopeful.has(slot) && fills.findIndex((each) => each.slot === slot) === f ? [f] : []));
}

/** Does for a unit what is best for it, or leaves it as it is. */
function take(standing: Standing, { item, options, fills }: UnitAlone, taken: boolean): void {
  const { units, models } = standing.problem;
  const u = units.findIndex(({ id }) => id === item.id);
  units[u]!.things.forEach((at, i) => make(standing, { set: 'option', at, to: options[i]! }));
  make(standing, { set: 'open', at: u, to: taken ? 1 : 0 });
  const own = models[units[u]!.model]!.pools.flatMap((pool) => pool.fills).sort((a, b) => a - b);
  own.forEach((at, i) => make(standing, { set: 'fill', at, to: taken ? fills[i]! : 0 }));
}

/** Each of these units becomes a model of its own, which only its own assemblies and bought parts fit; loose assemblies are left out. */
function pileApart(pile: Pile, ids: ReadonlySet<string>): Pile {
  const apart = pile.items.filter(({ id }) => ids.has(id));
  const nameOf = (item: PileItem): string => `${item.model} of ${item.id}`;
  const byId = new Map(pile.models.map((model) => [model.id, model]));
  return {
    ...pile,
    models: [...apart.map((item) => ({ ...byId.get(item.model)!, id: nameOf(item) })), ...pile.models],
    items: [...apart.map((item) => ({ ...item, model: nameOf(item) })), ...pile.items.filter(({ id, whole }) => whole && !ids.has(id))],
    parts: pile.parts.map((part) => ({
      ...part,
      fills: part.fills.flatMap((fill) => apart.flatMap((item) => (item.model === fill.model ? [{ ...fill, model: nameOf(item) }] : []))),
    })),
  };
}
