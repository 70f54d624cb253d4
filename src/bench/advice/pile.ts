import type { Item } from '../state.ts';
import type { AdviceView, ItemRow, PileView } from '../views/index.ts';
import { adviceAtRest, adviceWithoutModel } from './at-rest.ts';
import type { Desk, Weighed } from './desk.ts';
import { whole } from './say.ts';

const UNFINISHED: ReadonlySet<string> = new Set(['bought', 'on-the-bench', 'proved', 'listed']);

/** All that is owned and unfinished, most money per hour first; each donor is given away once, to the unit that gains most by it. */
export function pileView(desk: Desk, rowOf: (item: Item) => ItemRow): PileView {
  const units = [...desk.state.items.values()].filter((item) => item.kind === 'unit' && UNFINISHED.has(item.status));
  const weighed = shareDonors(desk, units);
  const plan = units
    .map((item) => planLine(desk, item, weighed.get(item.id) ?? null, rowOf(item)))
    .sort((a, b) => gain(b) - gain(a) || b.value_minor - a.value_minor || a.row.number - b.row.number);
  return {
    currency: desk.state.settings.currency,
    counts: countByStatus(desk.state.items.values()),
    plan,
    value_minor: plan.reduce((sum, line) => sum + line.value_minor, 0),
    minutes: Math.round(plan.reduce((sum, line) => sum + line.minutes, 0) * 10) / 10,
  };
}

type Line = PileView['plan'][number];

/** Money per minute; what takes no time comes first. */
const gain = ({ value_minor: value, minutes }: Line): number => value / Math.max(1, minutes);

function planLine(desk: Desk, item: Item, weighed: Weighed | null, row: ItemRow): Line {
  const advice = adviceFor(desk, item, weighed);
  const shown = { row, advice_do: advice.do, headline: advice.headline };
  if (!weighed)
    return {
      ...shown,
      road: 'leave',
      value_minor: 0,
      low_minor: 0,
      high_minor: 0,
      chance: 0,
      minutes: 0,
      why: adviceWithoutModel(item).why,
    };
  const { decision } = weighed;
  const option = decision.options.find(({ road }) => road === decision.weighed.best)!;
  const worth = decision.weighed.worth.find(({ road }) => road === decision.weighed.best)!;
  return {
    ...shown,
    road: option.road,
    value_minor: whole(worth.valueMinor),
    low_minor: whole(worth.lowMinor),
    high_minor: whole(worth.highMinor),
    chance: Math.min(1, Math.max(0, option.chance)),
    minutes: Math.round(option.minutes * 10) / 10,
    why: [...option.why],
  };
}

const adviceFor = (desk: Desk, item: Item, weighed: Weighed | null): Pick<AdviceView, 'do' | 'headline'> =>
  adviceAtRest(item, desk.state.settings.currency, 0) ?? (weighed ? desk.adviseInShort(weighed) : adviceWithoutModel(item));

/**
 * Weighs every unit; where several want the same donor, or a donor wants one itself, the one that gains most has it
 * and the others are weighed again without. A greedy rule.
 */
function shareDonors(desk: Desk, units: readonly Item[]): Map<string, Weighed> {
  const result = new Map<string, Weighed>();
  const taken = new Set<string>();
  const waiting = units.flatMap((item) => desk.weigh(item) ?? []);
  waiting.sort((a, b) => swapLead(b) - swapLead(a));
  for (const first of waiting) {
    const donor = donorOf(first);
    const clash = taken.has(first.item.id) || (donor !== null && taken.has(donor));
    const weighed = clash ? desk.weigh(first.item, taken.has(first.item.id) ? everyDonor(first, taken) : taken)! : first;
    const used = donorOf(weighed);
    if (used !== null) taken.add(used).add(weighed.item.id);
    result.set(first.item.id, weighed);
  }
  return result;
}

const donorOf = ({ decision }: Weighed): string | null => (decision.weighed.best === 'transplant' ? decision.swap.donor!.itemId : null);

const everyDonor = ({ donors }: Weighed, taken: ReadonlySet<string>): ReadonlySet<string> =>
  new Set([...taken, ...[...donors.values()].flat().map((donor) => donor.itemId)]);

/** How much the transplant brings over the next best road; nothing for units that take another road. */
const swapLead = ({ decision }: Weighed): number => (decision.weighed.best === 'transplant' ? (decision.weighed.next?.lessMinor ?? 0) : -1);

function countByStatus(items: Iterable<Item>): PileView['counts'] {
  const counts: PileView['counts'] = {};
  for (const { status } of items) counts[status] = (counts[status] ?? 0) + 1;
  return counts;
}
