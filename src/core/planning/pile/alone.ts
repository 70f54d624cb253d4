import { idleChoice, type Choice } from './choice.ts';
import { likelyOption } from './promise.ts';
import { attempt, make } from './changes.ts';
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

/**
 * What the obvious policy does: each unit by itself gets the remedies and parts that pay for it, the most profitable per
 * minute first, until money or hours run out; nothing moves between units. Orders are put together. Loose assemblies stay out.
 */
export function planAlone(pile: Pile): AlonePlan {
  const apart = pileApart(pile);
  const problem = problemOf(apart);
  const choice = idleChoice(problem);
  const standing = new Standing(problem, choice, AIM);
  const ranked = problem.units.map((_, u) => unitAlone(standing, u)).sort((a, b) => b.density - a.density || a.unit - b.unit);
  let minutes = 0;
  for (const { unit, gain, expected, options, fills } of ranked) {
    if (gain <= 0 || minutes + expected > pile.limits.minutes) continue;
    take(standing, unit, options, fills);
    if (standing.allowed() && standing.orders()) minutes += expected;
    else leave(standing, unit, fills);
  }
  return { problem, choice };
}

interface UnitAlone {
  readonly unit: number;
  readonly gain: number;
  readonly density: number;
  readonly expected: number;
  readonly options: readonly number[];
  readonly fills: readonly (readonly [number, number])[];
}

/** The best that can be done for one unit while nothing else is touched; postage not counted, as orders go together. */
function unitAlone(standing: Standing, unit: number): UnitAlone {
  const { problem, choice } = standing;
  const { things, model } = problem.units[unit]!;
  const idle = standing.score();
  const own = problem.models[model]!.pools.flatMap(({ fills }) => fills);
  const filled = own.filter((f) => {
    const here = things.find((t) => problem.things[t]!.slot === problem.fills[f]!.slot);
    return here === undefined || problem.things[here]!.options.every(({ chance }) => chance === 0);
  });
  take(
    standing,
    unit,
    things.map((t) => likelyOption(problem, t)),
    firstOfEachSlot(problem, filled),
  );
  let score = standing.score();
  for (let before = -Infinity; score > before + 1e-7;) {
    before = score;
    for (const t of things)
      for (let o = 0; o < problem.things[t]!.options.length; o++) {
        score = attempt(standing, [{ set: 'option', at: t, to: o }], score);
        for (const f of own.filter((each) => problem.fills[each]!.slot === problem.things[t]!.slot)) {
          score = attempt(
            standing,
            [
              { set: 'option', at: t, to: o },
              { set: 'fill', at: f, to: 1 - Math.min(1, choice.fill[f]!) },
            ],
            score,
          );
        }
      }
    for (const f of own) score = attempt(standing, [{ set: 'fill', at: f, to: 1 - Math.min(1, choice.fill[f]!) }], score);
  }
  const expected = standing.minutesNow() + standing.worth(model).built * problem.models[model]!.buildMinutes;
  const options = things.map((t) => choice.option[t]!);
  const fills = own.filter((f) => choice.fill[f]! > 0).map((f) => [f, choice.fill[f]!] as const);
  leave(standing, unit, fills);
  const gain = score - idle;
  return { unit, gain, density: gain / Math.max(1, expected), expected, options, fills };
}

function firstOfEachSlot({ fills }: Problem, candidates: readonly number[]): [number, number][] {
  const slots = new Map<number, number>();
  for (const f of candidates) if (!slots.has(fills[f]!.slot)) slots.set(fills[f]!.slot, f);
  return [...slots.values()].map((f) => [f, 1]);
}

function take(standing: Standing, unit: number, options: readonly number[], fills: readonly (readonly [number, number])[]): void {
  standing.problem.units[unit]!.things.forEach((at, i) => make(standing, { set: 'option', at, to: options[i]! }));
  make(standing, { set: 'open', at: unit, to: 1 });
  for (const [at, to] of fills) make(standing, { set: 'fill', at, to });
}

function leave(standing: Standing, unit: number, fills: readonly (readonly [number, number])[]): void {
  make(standing, { set: 'open', at: unit, to: 0 });
  for (const [at] of fills) make(standing, { set: 'fill', at, to: 0 });
}

/** Every unit becomes a model of its own, which only its own assemblies and bought parts fit. */
function pileApart(pile: Pile): Pile {
  const units = pile.items.filter((item) => item.whole && !item.keep);
  const loose = pile.items.filter((item) => !item.whole);
  const apart = (item: PileItem): string => `${item.model} of ${item.id}`;
  const byId = new Map(pile.models.map((model) => [model.id, model]));
  return {
    ...pile,
    models: [...units.map((item) => ({ ...byId.get(item.model)!, id: apart(item) })), ...pile.models],
    items: [...units.map((item) => ({ ...item, model: apart(item) })), ...loose],
    parts: pile.parts.map((part) => ({
      ...part,
      fills: part.fills.flatMap((fill) => units.flatMap((item) => (item.model === fill.model ? [{ ...fill, model: apart(item) }] : []))),
    })),
  };
}
