import { roundHalfEven } from '../../core/quantity/index.ts';
import type { Expected } from '../advice/index.ts';
import { incomeByItem } from '../books/money-of.ts';
import { costOf } from '../books/carried.ts';
import type { BenchState, Item } from '../state.ts';
import type { CalibrationView } from '../views/index.ts';
import { partsOf, type Judged, type Since } from './judge.ts';
import { lessonOf } from './lesson.ts';

/** A unit that has come to its end, from the day that it was received. */
export interface End {
  readonly item: Item;
  readonly at: string;
  readonly expected: Expected;
  readonly worked: boolean;
  readonly minutes: number;
  readonly partsMinor: number;
  /** What it brought from then on: income less parts and shares of cost that came to it, and minutes at the value of the hour of that day. */
  readonly cameMinor: number;
  readonly hourMinor: number;
}

/** Units that were sold, kept or scrapped, of which it is known what was thought when they came. */
export function endsOf(state: Readonly<BenchState>, judged: readonly Judged[]): End[] {
  const incomes = incomeByItem(state.journal);
  return judged.flatMap((each): End[] => {
    const item = each.about === 'start' ? state.items.get(each.itemId) : undefined;
    if (each.about !== 'start' || !item || !hasEnded(item)) return [];
    return [endOf(item, each.expected, each.since, incomes.get(item.id) ?? 0)];
  });
}

const hasEnded = ({ status }: Item): boolean => status === 'sold' || status === 'scrapped' || status === 'kept';

/** Kept ones count as working where they were proved; what they are worth to the person is not known. */
const endedWorking = ({ status, sale, proof }: Item): boolean =>
  status === 'sold' ? sale?.as === 'working' : status === 'kept' && proof.size > 0;

function endOf(item: Item, expected: Expected, since: Since, incomeMinor: number): End {
  const minutes = item.minutes - since.minutes;
  const spentMinor = costOf(item) - since.costMinor;
  const cameMinor = incomeMinor - spentMinor - (minutes * since.hourMinor) / 60;
  return {
    item,
    at: item.changedAt,
    expected,
    worked: endedWorking(item),
    minutes,
    partsMinor: partsOf(item) - since.partsMinor,
    cameMinor,
    hourMinor: since.hourMinor,
  };
}

/** Units with money at their end, those that brought most beyond what was thought first. */
export function decisionsOf({ settings }: Readonly<BenchState>, ends: readonly End[]): CalibrationView['best'] {
  return ends
    .filter(({ item }) => item.status !== 'kept')
    .sort((a, b) => b.cameMinor - b.expected.valueMinor - (a.cameMinor - a.expected.valueMinor))
    .map((end) => ({
      item_id: end.item.id,
      number: end.item.number,
      name: end.item.name,
      road: end.expected.road,
      chance: end.expected.chance,
      worked: end.worked,
      expected_minor: roundHalfEven(end.expected.valueMinor),
      came_minor: roundHalfEven(end.cameMinor),
      lesson: lessonOf(end, settings.currency),
    }));
}
