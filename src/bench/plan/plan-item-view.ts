import type { ItemPlan, PileItem } from '../../core/planning/index.ts';
import { lower, whole } from '../advice/say.ts';
import type { BenchState, PlanChoice } from '../state.ts';
import type { PlanItem } from '../views/index.ts';
import { slotChance } from './pile-of.ts';
import type { PlanNames } from './plan-names.ts';
import { reasonsFor, secondName, type ReasonSetting } from './plan-reasons.ts';

/** What happens in fewer outcomes is not what an item is there for. */
const SELDOM = 0.05;
/** What likely works is only treated where its proof fails. */
const LIKELY_NEEDLESS = 0.85;

/** One item of the plan in words and rounded numbers. */
export function planItemView(setting: ReasonSetting, state: Readonly<BenchState>, planned: ItemPlan): PlanItem {
  const { names, made } = setting;
  const item = made.from.pile.items.find(({ id }) => id === planned.item)!;
  const { number, name, kind } = state.items.get(item.id)!;
  const treatments = treatmentsOf(names, item, planned);
  const second = planned.otherwise ?? planned.second;
  return {
    item_id: item.id,
    number,
    name,
    kind,
    does: planned.does,
    headline: headlineOf(item, planned, treatments),
    treatments,
    finished_chance: planned.finishedShare,
    donor_chance: planned.donorShare,
    second: second && { name: secondName(names, item, second), less_minor: whole(second.lessMinor) },
    why: reasonsFor(setting, planned),
    choices: (state.planning.choices.get(item.id) ?? []).map((choice) => choiceView(setting, item, choice)),
    other_ways: otherWays(names, item, planned),
  };
}

function treatmentsOf(names: PlanNames, item: PileItem, { remedies }: ItemPlan): PlanItem['treatments'] {
  return Object.entries(remedies).map(([slot, remedy]) => ({
    slot,
    slot_name: names.slot(item.model, slot),
    remedy,
    name: names.treatment(item.id, remedy),
    works_now: slotChance(item, slot, undefined),
    works_after: slotChance(item, slot, remedy),
    minutes: Math.round(names.minutesOf(item.id, slot, remedy) * 10) / 10,
  }));
}

function headlineOf(item: PileItem, planned: ItemPlan, treatments: PlanItem['treatments']): string {
  if (planned.does === 'keep') return 'Leave it alone';
  if (planned.does === 'as-is') return 'Sell it as it is';
  const needed = treatments.filter(({ works_now: now }) => now < LIKELY_NEEDLESS);
  if (needed.length > 0) return treatmentsName(needed);
  if (planned.does === 'loose') return planned.donorShare > SELDOM ? 'Put it into a unit that needs it' : 'Keep it';
  if (planned.donorShare > planned.finishedShare) return 'Take it apart for others';
  return planned.finishedShare > SELDOM ? finishName(item) : 'Take it apart for the drawer';
}

/** "Board: clean the contacts; battery: put in a new one", and how many more. */
function treatmentsName(treatments: PlanItem['treatments']): string {
  const [first, second, ...more] = treatments.map((each) => `${each.slot_name}: ${lower(each.name)}`);
  const rest = more.length > 0 ? [`${more.length} more`] : [];
  return [first!, ...(second ? [lower(second)] : []), ...rest].join('; ');
}

const finishName = (item: PileItem): string => (item.whole!.openMinutes > 0 ? 'Complete it from others' : 'Prove it and offer it');

const choiceView = ({ names, made }: ReasonSetting, item: PileItem, choice: PlanChoice): PlanItem['choices'][number] => ({
  event_id: choice.eventId,
  said: choiceName(names, item, choice),
  regret_minor: choice.regretMinor,
  reason: choice.reason,
  counts:
    choice.does === 'keep' ||
    made.from.overrides.some((each) => each.item === item.id && ('does' in each ? each.does === choice.does : each.slot === choice.slot)),
});

/** What was, or could be, decided, in words. */
export function choiceName(
  names: PlanNames,
  { id, model }: PileItem,
  { does, slot, remedy }: Pick<PlanChoice, 'does' | 'slot' | 'remedy'>,
): string {
  if (does === 'open') return 'Work on it';
  if (does === 'as-is') return 'Sell it as it is';
  if (does === 'keep') return 'Leave it alone';
  return `${names.slot(model, slot)}: ${lower(names.treatment(id, remedy))}`;
}

/** Everything that could be decided instead of what is planned. */
function otherWays(names: PlanNames, item: PileItem, { does, remedies }: ItemPlan): PlanItem['other_ways'] {
  if (does === 'keep') return [];
  const wholes = (item.whole ? (['open', 'as-is', 'keep'] as const) : (['keep'] as const)).filter((way) => way !== does);
  const treated = does === 'as-is' ? [] : item.assemblies;
  const ways = treated.flatMap(({ slot, remedies: all }) =>
    [null, ...all.map(({ id }) => id)]
      .filter((remedy) => remedy !== (remedies[slot] ?? null))
      .map((remedy) => ({ does: null, slot, remedy })),
  );
  return [...wholes.map((way) => ({ does: way, slot: null, remedy: null })), ...ways].map((way) => ({
    ...way,
    name: choiceName(names, item, { ...way, slot: way.slot ?? '' }),
  }));
}
