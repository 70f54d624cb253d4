import type { RankedCheck } from '../../core/diagnosis/index.ts';
import type { Stakes } from '../../core/diagnosis/model.ts';
import { priceSpread, weighRoads, type WeighedRoads } from '../../core/planning/index.ts';
import type { Item } from '../state.ts';
import type { DecisionView, Road } from '../views/index.ts';
import { adviceId } from './advice-id.ts';
import type { Beliefs, Judged } from './beliefs.ts';
import type { Donor } from './donors.ts';
import { heldBy, type Held } from './held.ts';
import { tellingOf } from './knowing.ts';
import { partOut, type PartOut } from './part-out.ts';
import { forPartsMinor, whyForParts, type Prices } from './prices.ts';
import { repairRoad, type RepairRoad } from './repair-road.ts';
import type { RoadOption } from './road-option.ts';
import { money, whole } from './say.ts';
import { NO_SWAP, swapRoad, type SwapRoad } from './swap-road.ts';
import type { Workshop } from './workshop.ts';

/** All four roads of one unit, weighed. */
export interface Decision {
  readonly options: readonly RoadOption[];
  readonly weighed: WeighedRoads<Road>;
  /** By worth per minute, declined ones left out. */
  readonly checks: readonly RankedCheck[];
  readonly repair: RepairRoad;
  readonly swap: SwapRoad;
  readonly parts: PartOut;
  readonly stakes: Stakes;
  readonly prices: Prices;
  /** Steps of proof that failed for good: then the unit is not mended any more. */
  readonly unproved: readonly string[];
}

export interface DecisionSetting {
  readonly item: Item;
  readonly judged: Judged;
  readonly beliefs: Beliefs;
  readonly workshop: Workshop;
  readonly donors: ReadonlyMap<string, readonly Donor[]>;
  readonly prices: Prices;
  /** Steps of proof that failed for good. */
  readonly unproved: readonly string[];
  /** The checks that may be done, ranked. */
  readonly rank: (stakes: Stakes) => readonly RankedCheck[];
}

/** Weighs repair, transplant, part out and leave for one unit alone. Declined roads are shown and not taken, save the last one left. */
export function decide(setting: DecisionSetting): Decision {
  const { item, judged, prices, workshop, unproved } = setting;
  const { items } = setting.beliefs.state;
  const parts = partOut(item, judged, prices, items);
  const held = heldBy(item, judged.model, items);
  const stakes = stakesFor(item, judged, prices, parts, held);
  const checks = setting.rank(stakes);
  const telling = tellingOf(checks);
  const repair = repairRoad(judged, workshop.alone, stakes, prices, telling, unproved);
  const swap = setting.donors.size === 0 ? NO_SWAP : swapRoad({ ...setting, alone: workshop.alone, stakes, telling });
  const options = [repair.option, swap.option, partOutOption(parts), leaveOption(prices, held)].map((option) => declinable(item, option));
  return { options, weighed: weighRoads(options), checks, repair, swap, parts, stakes, prices, unproved };
}

function stakesFor(item: Item, { model }: Judged, prices: Prices, parts: PartOut, held: Held): Stakes {
  const taken = item.declined.has(adviceId('road', 'part-out')) ? 0 : parts.valueMinor;
  return {
    workingMinor: prices.workingMinor,
    asIsMinor: Math.max(forPartsMinor(prices, held), taken),
    hourMinor: prices.hourMinor,
    openingMinutes: { open: model.file.opening_minutes.open, 'board-out': model.file.opening_minutes.board_out },
    stage: item.stage,
  };
}

const partOutOption = (parts: PartOut): RoadOption => ({
  road: 'part-out',
  possible: parts.slots.length > 0,
  outcomes: parts.outcomes,
  chance: 0,
  minutes: parts.minutes,
  spendMinor: 0,
  why: parts.why,
});

const leaveOption = (prices: Prices, held: Held): RoadOption => ({
  road: 'leave',
  possible: true,
  outcomes: priceSpread(forPartsMinor(prices, held), prices.spread),
  chance: 0,
  minutes: 0,
  spendMinor: 0,
  why: [whyForParts(prices, held)],
});

/** Selling as it is can be declined too, but something must remain to be done, so it stays possible. */
function declinable(item: Item, option: RoadOption): RoadOption {
  const reason = item.declined.get(adviceId('road', option.road));
  if (reason === undefined || option.road === 'leave') return option;
  return { ...option, possible: false, why: [`You declined this${reason ? `: ${reason}` : ''}.`, ...option.why] };
}

const ROAD_WORDS: Readonly<Record<Road, string>> = {
  repair: 'Repair',
  transplant: 'Transplant',
  'part-out': 'Taking it apart',
  leave: 'Selling it as it is',
};

/** The decision with its numbers rounded to whole minor units and its reasons in words. */
export function decisionView({ options, weighed, prices }: Decision): DecisionView {
  const best = weighed.worth.find((worth) => worth.road === weighed.best)!;
  const lead = weighed.next
    ? `, ${money(weighed.next.lessMinor, prices.currency)} more than ${ROAD_WORDS[weighed.next.road].toLowerCase()}`
    : '; no other road is possible';
  return {
    road: weighed.best,
    options: options.map((option, i) => ({
      road: option.road,
      possible: option.possible,
      value_minor: whole(weighed.worth[i]!.valueMinor),
      low_minor: whole(weighed.worth[i]!.lowMinor),
      high_minor: whole(weighed.worth[i]!.highMinor),
      chance: Math.min(1, Math.max(0, option.chance)),
      minutes: Math.round(option.minutes * 10) / 10,
      spend_minor: whole(option.spendMinor),
      why: [...option.why],
    })),
    why: [
      `${ROAD_WORDS[weighed.best]} brings ${money(best.valueMinor, prices.currency)} from here on${lead}.`,
      'Minutes are paid at the value of your hour; this unit is weighed alone, without what the rest of the pile could do with its parts.',
      ...prices.assumed,
    ],
  };
}
