import { PlanningError } from '../planning-error.ts';
import type { Choice } from './choice.ts';
import { finishOutcome, worthOfOutcome, type Outcome } from './finish.ts';
import type { PilePlan } from './plan.ts';
import { chanceAfter, type Pile } from './pile.ts';
import { choiceFrom } from './remembered.ts';
import { problemOf, type Problem } from './problem.ts';
import { simulate } from './simulate.ts';

const CLOSE = 1e-6;
/** So many outcomes are finished in full and looked through. */
const OUTCOMES = 40;

/**
 * The law of a plan: throws `PlanningError` with what is broken, if anything is. It goes by the names in the plan and the pile alone
 * and adds everything up anew: every item appears once, remedies exist, orders cover what is used, limits are kept, money adds up, and
 * in sampled outcomes units are finished only from different things that work there.
 */
export function assertPlan(pile: Pile, plan: PilePlan): void {
  const [broken] = brokenLaws(pile, plan);
  if (broken !== undefined) throw new PlanningError('broken-plan', broken);
}

/** The laws that a plan breaks, as sentences; none when it is sound. */
export function brokenLaws(pile: Pile, plan: PilePlan): string[] {
  // Later laws go by what earlier ones have found to be there.
  for (const laws of [itemLaws, orderLaws, limitLaws, outcomeLaws]) {
    const broken = laws(pile, plan);
    if (broken.length > 0) return broken;
  }
  return [];
}

function itemLaws(pile: Pile, plan: PilePlan): string[] {
  const planned = new Map(plan.items.map((item) => [item.item, item]));
  const broken: string[] = [];
  if (planned.size !== plan.items.length) broken.push('an item is planned twice');
  if (planned.size !== pile.items.length) broken.push(`${pile.items.length} items lie in the pile, ${planned.size} in the plan`);
  for (const item of pile.items) {
    const { does, remedies } = planned.get(item.id) ?? { does: 'missing', remedies: {} };
    const fitting = item.keep ? ['keep'] : item.whole ? ['open', 'as-is'] : ['loose'];
    if (!fitting.includes(does)) broken.push(`${item.id} is ${does}, which it cannot be`);
    for (const [slot, remedy] of Object.entries(remedies)) {
      if (does !== 'open' && does !== 'loose') broken.push(`${item.id} is ${does} and worked on`);
      if (!item.assemblies.some((each) => each.slot === slot && each.remedies.some(({ id }) => id === remedy)))
        broken.push(`${item.id} has no remedy ${remedy} for its ${slot}`);
    }
  }
  return broken;
}

/** What is used of each part, less what remedies give. */
function usedParts(pile: Pile, plan: PilePlan): Map<string, number> {
  const used = new Map<string, number>();
  const add = (part: string, n: number): void => void used.set(part, (used.get(part) ?? 0) + n);
  for (const { remedy } of remediesOf(pile, plan)) {
    for (const [part, n] of Object.entries(remedy.uses)) add(part, n);
    for (const [part, n] of Object.entries(remedy.gives)) add(part, -n);
  }
  for (const { part, count } of plan.fits) add(part, count);
  return used;
}

function remediesOf(pile: Pile, plan: PilePlan) {
  const items = new Map(pile.items.map((item) => [item.id, item]));
  return plan.items.flatMap(({ item, remedies }) =>
    Object.entries(remedies).map(([slot, id]) => {
      const assembly = items.get(item)!.assemblies.find((each) => each.slot === slot)!;
      return { assembly, remedy: assembly.remedies.find((each) => each.id === id)! };
    }),
  );
}

function orderLaws(pile: Pile, plan: PilePlan): string[] {
  const broken: string[] = [];
  const bought = new Map<string, number>();
  for (const basket of plan.baskets) {
    const supplier = pile.suppliers.find(({ id }) => id === basket.supplier);
    if (!supplier) return [`${basket.supplier} is no supplier`];
    if (supplier.days > pile.wishes.withinDays) broken.push(`${supplier.id} takes too long`);
    let sum = supplier.postageMinor;
    for (const { part, count, costMinor } of basket.lines) {
      const offer = supplier.offers.find((each) => each.part === part);
      if (!offer || count < offer.least) broken.push(`${supplier.id} does not sell ${count} of ${part}`);
      if (offer && Math.abs(costMinor - count * offer.unitMinor) > CLOSE) broken.push(`the price of ${part} is not that of ${supplier.id}`);
      sum += costMinor;
      bought.set(part, (bought.get(part) ?? 0) + count);
    }
    if (Math.abs(sum - basket.costMinor) > CLOSE) broken.push(`the basket of ${supplier.id} does not add up`);
  }
  for (const [part, n] of usedParts(pile, plan)) {
    const stock = pile.parts.find(({ id }) => id === part)?.stock ?? 0;
    if (n > stock + (bought.get(part) ?? 0))
      broken.push(`${n} of ${part} are used, ${stock} are there and ${bought.get(part) ?? 0} ordered`);
  }
  for (const { part, model, slot } of plan.fits)
    if (!pile.parts.some((each) => each.id === part && each.fills.some((fill) => fill.model === model && fill.slot === slot)))
      broken.push(`${part} does not fill ${slot} of ${model}`);
  return broken;
}

function limitLaws(pile: Pile, plan: PilePlan): string[] {
  const broken: string[] = [];
  const worked = remediesOf(pile, plan);
  const done = new Map(plan.items.map(({ item, does, remedies }) => [item, { does, remedies }]));
  let money =
    plan.baskets.reduce((sum, { costMinor }) => sum + costMinor, 0) + worked.reduce((sum, { remedy }) => sum + remedy.costMinor, 0);
  let minutes = worked.reduce((sum, { remedy }) => sum + remedy.minutes, 0);
  for (const item of pile.items) {
    const { does, remedies } = done.get(item.id) ?? { does: 'keep', remedies: {} };
    if (does === 'open') minutes += item.whole!.openMinutes;
    if (does === 'open' || does === 'loose')
      for (const { slot, started } of item.assemblies)
        if (started && (remedies as Record<string, string>)[slot] !== started.remedy) money += started.switchMinor;
  }
  for (const { part, model, slot, count } of plan.fits) {
    minutes +=
      count * (pile.parts.find(({ id }) => id === part)?.fills.find((fill) => fill.model === model && fill.slot === slot)?.minutes ?? 0);
  }
  if (Math.abs(money - plan.spent.moneyMinor) > CLOSE) broken.push(`${plan.spent.moneyMinor} is said to be spent, it adds up to ${money}`);
  if (Math.abs(minutes - plan.spent.minutesNow) > CLOSE)
    broken.push(`${plan.spent.minutesNow} minutes are said to be worked, it adds up to ${minutes}`);
  if (money > pile.limits.moneyMinor + CLOSE) broken.push(`${money} is spent, ${pile.limits.moneyMinor} may be`);
  if (minutes > pile.limits.minutes + CLOSE)
    broken.push(`${minutes} minutes are worked before anything is finished, ${pile.limits.minutes} may be`);
  const weekly = plan.weeks.some((week) => pile.limits.minutesAWeek > 0 && week.minutes > pile.limits.minutesAWeek + CLOSE);
  if (weekly) broken.push('a week has more work than fits into it');
  return broken;
}

function outcomeLaws(pile: Pile, plan: PilePlan): string[] {
  const problem = problemOf(pile);
  const choice = choiceFrom(problem, plan);
  const seed = `${plan.seed} law`;
  const { profits } = simulate(problem, choice, seed, OUTCOMES);
  const spread = remediesOf(pile, plan).some(({ remedy }) => remedy.minutesSpread > 0);
  const fixed = fixedMoney(pile, plan);
  const broken: string[] = [];
  for (let k = 0; k < OUTCOMES; k++) {
    const outcome = finishOutcome(problem, choice, pile.limits.minutes - plan.spent.minutesNow, seed, k);
    broken.push(...finishedLaws(problem, choice, outcome, pile.limits.minutes - plan.spent.minutesNow));
    const sum = fixed + worthOfOutcome(problem, outcome);
    if (!spread && Math.abs(sum - profits[k]!) > 1e-4) broken.push(`an outcome is said to bring ${profits[k]}, it adds up to ${sum}`);
  }
  return broken;
}

/** What is the same in every outcome: units sold as they are, what is spent, waited and worked now, what is left of parts. */
function fixedMoney(pile: Pile, plan: PilePlan): number {
  const does = new Map(plan.items.map((item) => [item.item, item.does]));
  const used = usedParts(pile, plan);
  const bought = new Map<string, number>();
  for (const { lines } of plan.baskets) for (const { part, count } of lines) bought.set(part, (bought.get(part) ?? 0) + count);
  const sold = pile.items.reduce((sum, { id, whole }) => sum + (does.get(id) === 'as-is' ? whole!.asIsMinor : 0), 0);
  const parts = pile.parts.reduce(
    (sum, { id, stock, keptMinor }) => sum + (stock + (bought.get(id) ?? 0) - (used.get(id) ?? 0)) * keptMinor,
    0,
  );
  const waiting = plan.baskets.reduce((sum, { days }) => sum + days * pile.wishes.dayMinor, 0);
  return sold + parts - waiting - plan.spent.moneyMinor - (plan.spent.minutesNow * pile.wishes.hourMinor) / 60;
}

function finishedLaws(problem: Problem, choice: Choice, { finished, left }: Outcome, minutes: number): string[] {
  const broken: string[] = [];
  const seen = new Set<string>();
  const take = (model: number, slot: number, thing: number | null, fill: number | null, copy: number): void => {
    const name = thing === null ? `copy ${copy} of fill ${fill}` : `${problem.things[thing]!.item} ${problem.things[thing]!.assembly.slot}`;
    if (seen.has(name)) broken.push(`${name} is used twice`);
    seen.add(name);
    const home = thing === null ? problem.fills[fill!]! : problem.things[thing]!;
    if (home.model !== model || home.slot !== slot) broken.push(`${name} sits where it does not fit`);
    if (thing !== null && problem.things[thing]!.unit >= 0 && choice.open[problem.things[thing]!.unit] !== 1)
      broken.push(`${name} comes from a unit that is not opened`);
  };
  for (const { model, holds } of finished)
    holds.forEach((what, slot) => {
      if (!what.works || !canWork(problem, choice, what.thing))
        broken.push(`a unit of ${problem.models[model]!.id} is finished with something that does not work`);
      take(model, slot, what.thing, what.fill, what.copy);
    });
  for (const { holds, model } of finished)
    if (holds.length !== problem.models[model]!.slots.length) broken.push('a unit is finished with an empty slot');
  for (const { model, what } of left) take(model, what.slot, what.thing, what.fill, what.copy);
  const worked = finished.reduce((sum, { model }) => sum + problem.models[model]!.buildMinutes, 0);
  if (worked > Math.max(0, minutes) + CLOSE) broken.push(`finishing takes ${worked} minutes, ${minutes} are left`);
  return broken;
}

function canWork({ things }: Problem, choice: Choice, t: number | null): boolean {
  if (t === null) return true;
  const { assembly, options } = things[t]!;
  return chanceAfter(assembly, options[choice.option[t]!]!.remedy) > 0;
}
