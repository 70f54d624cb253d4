import { afterTransplant } from '../../core/diagnosis/index.ts';
import type { DeviceModel, Stakes } from '../../core/diagnosis/model.ts';
import { meanOf, shiftedBy, spreadAbove, surely, type Outcome } from '../../core/planning/index.ts';
import { slotContent } from '../slots.ts';
import type { Item } from '../state.ts';
import { bestRepair } from './best-repair.ts';
import type { Beliefs, Judged } from './beliefs.ts';
import { blocksOfSlot } from './device-model.ts';
import { donorWords, slotTrouble, swapRemedy, type Donor } from './donors.ts';
import { heldBy } from './held.ts';
import type { Telling } from './knowing.ts';
import { partOut } from './part-out.ts';
import { forPartsMinor, type Prices } from './prices.ts';
import { hourly, openingMinutes, type RoadOption } from './road-option.ts';
import { minutesText, money, percent, upper } from './say.ts';
import { slotWell, wellChance } from './well-chance.ts';

/** Giving the unit another assembly: which, from where, and what it is worth. */
export interface SwapRoad {
  readonly option: RoadOption;
  readonly slot: string | null;
  readonly donor: Donor | null;
}

/** What the worth of a swap depends on. */
export interface SwapSetting {
  readonly item: Item;
  readonly judged: Judged;
  readonly beliefs: Beliefs;
  readonly donors: ReadonlyMap<string, readonly Donor[]>;
  readonly alone: DeviceModel;
  readonly stakes: Stakes;
  readonly telling: Telling;
  readonly prices: Prices;
}

/** So many slots are worked out to the end: those where the unit is likeliest to work after the swap. */
const MOST_SLOTS = 2;

export const NO_SWAP: SwapRoad = {
  option: {
    road: 'transplant',
    possible: false,
    outcomes: surely(0),
    chance: 0,
    minutes: 0,
    spendMinor: 0,
    why: ['No assembly at hand would help: the drawer and the other units hold none for a slot that is in doubt.'],
  },
  slot: null,
  donor: null,
};

/** The best swap there is, mending what is left afterwards; `NO_SWAP` when no donor is at hand. */
export function swapRoad(setting: SwapSetting): SwapRoad {
  const swaps = [...setting.donors]
    .flatMap(([slot, [donor]]) => (donor ? [{ slot, donor, hope: hopeAfter(setting, slot) * donor.chance }] : []))
    .filter(({ slot, donor }) => slotTrouble(setting.judged, slot) > 1 - donor.chance)
    .sort((a, b) => b.hope - a.hope)
    .slice(0, MOST_SLOTS)
    .map(({ slot, donor }) => swapOf(setting, slot, donor));
  return swaps.reduce((best, swap) => (best.donor && meanOf(best.option.outcomes) >= meanOf(swap.option.outcomes) ? best : swap), NO_SWAP);
}

function hopeAfter({ judged }: SwapSetting, slot: string): number {
  const inside = new Set(blocksOfSlot(judged.model.file, slot));
  const others = judged.model.file.blocks.filter((block) => !inside.has(block.id)).map((block) => block.id);
  return wellChance(judged.model, judged.belief, others);
}

function swapOf(setting: SwapSetting, slot: string, donor: Donor): SwapRoad {
  const { item, judged, beliefs, prices } = setting;
  const blocks = blocksOfSlot(judged.model.file, slot);
  const after = { ...judged, belief: afterTransplant(judged.device, judged.belief, blocks, donor.faults) };
  const remedy = swapRemedy(judged.model, slot);
  const stage = remedy?.stage ?? 'open';
  const minutes = swapMinutes(setting, slot, donor);
  const spareMinor = removedWorth(setting, slot) - donor.valueMinor - hourly(minutes, prices.hourMinor);
  const filled = { ...item, stage, slots: new Map(item.slots).set(slot, donor.itemId) };
  const { items } = beliefs.state;
  const asIs = forPartsMinor(prices, heldBy(filled, judged.model, items));
  const asIsMinor = Math.max(asIs, partOut(filled, after, prices, items).valueMinor);
  const rest = bestRepair(judged.model, setting.alone, after.belief, { ...setting.stakes, stage, asIsMinor }, setting.telling);
  const spread = spreadAbove(rest.outcomes, asIsMinor, prices.workingMinor, prices.spread);
  const risk = remedy?.risk ?? 0;
  const option: RoadOption = {
    road: 'transplant',
    possible: true,
    outcomes: shiftedBy(orRuined(spread, risk, setting.stakes.asIsMinor), spareMinor),
    chance: (1 - risk) * rest.chance,
    minutes: minutes + rest.minutes,
    spendMinor: rest.spendMinor,
    why: [],
  };
  return { option: { ...option, why: whySwap(setting, slot, donor, option, minutes) }, slot, donor };
}

const orRuined = (outcomes: readonly Outcome[], risk: number, ruinedMinor: number): readonly Outcome[] =>
  risk === 0 ? outcomes : [...outcomes.map((o) => ({ ...o, chance: o.chance * (1 - risk) })), { valueMinor: ruinedMinor, chance: risk }];

/** Opening this unit and changing the assembly; opening the donor and taking it out there, when it sits in a unit. */
function swapMinutes({ item, judged: { model } }: SwapSetting, slot: string, donor: Donor): number {
  const remedy = swapRemedy(model, slot);
  const own = model.file.slots.find((spec) => spec.id === slot)!.minutes;
  const stage = remedy?.stage ?? 'open';
  const here = openingMinutes(model, item.stage, stage) + (remedy?.minutes ?? own);
  return here + (donor.fromUnit ? openingMinutes(model, 'closed', stage) + own : 0);
}

/** What the assembly that comes out is worth: nothing when the slot is empty. */
function removedWorth({ item, judged, beliefs }: SwapSetting, slot: string): number {
  const { model } = judged;
  if (slotContent(item, slot, beliefs.state.items, model).holds === 'nothing') return 0;
  const value = model.file.slots.find((spec) => spec.id === slot)?.value ?? 0;
  return value * slotWell(judged, slot);
}

function whySwap({ judged, prices }: SwapSetting, slot: string, donor: Donor, option: RoadOption, minutes: number): string[] {
  return [
    `${upper(donorWords(judged.model, slot, donor))}: ${percent(donor.chance)} that it is well; the one in there is well with ${percent(1 - slotTrouble(judged, slot))}.`,
    `${percent(option.chance)} that it ends as a working unit. ${prices.whyWorking}`,
    `The change takes ${minutesText(minutes)}, ${money(hourly(minutes, prices.hourMinor), prices.currency)}, and uses up ${money(donor.valueMinor, prices.currency)} of assembly.`,
  ];
}
