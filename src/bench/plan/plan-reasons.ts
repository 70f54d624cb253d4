import type { ItemPlan, PileItem, PilePlan } from '../../core/planning/index.ts';
import { lower, money, percent } from '../advice/say.ts';
import type { Made } from './planner.ts';
import type { PlanNames } from './plan-names.ts';
import { slotChance } from './pile-of.ts';

/** What the reasons are made from. */
export interface ReasonSetting {
  readonly made: Made;
  readonly plan: PilePlan;
  readonly names: PlanNames;
  readonly currency: string;
}

/** An assembly that may go into another unit, with its chance to work when the plan is done with it. */
interface Mover {
  readonly item: string;
  readonly chance: number;
}

/** An assembly less likely well than this is doubtful; another one is better if it is so much likelier well. */
const DOUBTFUL = 0.5;
const BETTER_BY = 0.2;
const SHARE_SHOWN = 0.05;
/** At most so many slots are told of. */
const MOST_MOVES = 3;

/** Why the plan does this with an item, from the numbers of the plan. */
export function reasonsFor(setting: ReasonSetting, planned: ItemPlan): string[] {
  const { made, currency } = setting;
  const item = made.from.pile.items.find(({ id }) => id === planned.item)!;
  const lines = planned.does === 'as-is' ? asIsReasons(item, currency) : [...endReasons(planned), ...moveReasons(setting, planned, item)];
  return planned.does === 'keep'
    ? ['You want it left alone, so the plan does not touch it.']
    : [...lines, ...secondReasons(setting, planned)];
}

const asIsReasons = ({ whole }: PileItem, currency: string): string[] => [
  `Sold as it is it brings ${money(whole!.asIsMinor, currency)}, without work; its assemblies are not worth more elsewhere in this pile.`,
];

function endReasons({ does, finishedShare, donorShare }: ItemPlan): string[] {
  const finished = `In ${percent(finishedShare)} of outcomes it ends as a finished unit`;
  if (does === 'loose')
    return [
      donorShare > SHARE_SHOWN
        ? `In ${percent(donorShare)} of outcomes it completes a unit.`
        : 'No unit of this pile is likely to need it; it is kept.',
    ];
  return [donorShare > SHARE_SHOWN ? `${finished}, in ${percent(donorShare)} something of it completes another unit.` : `${finished}.`];
}

/** Where another assembly goes in whole, and what of this one is wanted elsewhere. */
function moveReasons(setting: ReasonSetting, planned: ItemPlan, item: PileItem): string[] {
  const { names } = setting;
  if (planned.does !== 'open') return [];
  const slots = setting.made.from.pile.models.find(({ id }) => id === item.model)!.slots;
  const moves = slots.flatMap(({ id: slot }) => {
    const own = slotChance(item, slot, planned.remedies[slot]);
    const best = moversFor(setting, item, slot).find(({ chance }) => chance > own + BETTER_BY);
    return own < DOUBTFUL && best && planned.finishedShare > SHARE_SHOWN ? [moveReason(names, item, slot, own, best)] : [];
  });
  return moves.slice(0, MOST_MOVES);
}

function moveReason(names: PlanNames, item: PileItem, slot: string, own: number, { item: from, chance }: Mover): string {
  const name = lower(names.slot(item.model, slot));
  const isThere = item.assemblies.some((each) => each.slot === slot);
  const whole = `the ${name} of ${names.item(from)} works with ${percent(chance)} and goes in whole`;
  if (!isThere) return `It lacks its ${name}; ${whole}.`;
  return `Its ${name} would work with ${percent(own)}; ${whole}, rather than giving parts to this one: taking them off would spend a ${name} that works for one that may not.`;
}

/** Assemblies of the pile for a slot, other than its own, likeliest to work first. */
function moversFor({ made, plan }: ReasonSetting, { id, model }: PileItem, slot: string): Mover[] {
  const planOf = new Map(plan.items.map((each) => [each.item, each]));
  return made.from.pile.items
    .filter((other) => other.id !== id && other.model === model && ['open', 'loose'].includes(planOf.get(other.id)?.does ?? ''))
    .map((other) => ({ item: other.id, chance: slotChance(other, slot, planOf.get(other.id)!.remedies[slot]) }))
    .sort((a, b) => b.chance - a.chance);
}

function secondReasons({ names, currency, made }: ReasonSetting, planned: ItemPlan): string[] {
  const { second, otherwise } = planned;
  const item = made.from.pile.items.find(({ id }) => id === planned.item)!;
  const others = second && second !== otherwise && second.kind === 'remedy' ? [otherwise, second] : [otherwise ?? second];
  return others.flatMap((other) =>
    other ? [`Not ${lower(secondName(names, item, other))}: the whole plan would earn ${money(other.lessMinor, currency)} less.`] : [],
  );
}

/** The next best way in words. */
export function secondName(
  names: PlanNames,
  { id, model }: Pick<PileItem, 'id' | 'model'>,
  second: NonNullable<ItemPlan['second']>,
): string {
  if (second.kind === 'remedy') return `${names.treatment(id, second.remedy)} (${lower(names.slot(model, second.slot))})`;
  return second.kind === 'open' ? 'Work on it' : 'Sell it as it is';
}
