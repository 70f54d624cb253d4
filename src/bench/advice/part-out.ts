import { meanOf, merged, type Outcome } from '../../core/planning/index.ts';
import type { Model } from '../models/index.ts';
import { slotContent } from '../slots.ts';
import type { Item } from '../state.ts';
import type { Judged } from './beliefs.ts';
import { blocksOfSlot } from './device-model.ts';
import type { Prices } from './prices.ts';
import { minutesText, money, percent } from './say.ts';
import { faultsIn, shareSpared, slotWell } from './well-chance.ts';

/** A unit taken apart for what its assemblies are worth in the drawer. */
export interface PartOut {
  readonly outcomes: readonly Outcome[];
  readonly valueMinor: number;
  readonly minutes: number;
  /** Slots worth the minutes of taking them out. */
  readonly slots: readonly string[];
  readonly why: readonly string[];
}

interface Pick {
  readonly slot: string;
  readonly name: string;
  readonly valueMinor: number;
  readonly well: number;
  readonly minutes: number;
  readonly faults: ReadonlySet<string>;
  /** Chance that something unknown spares it. */
  readonly spared: number;
}

/**
 * Each assembly that is worth more than the minutes to take it out, times the chance that it is well, less all minutes
 * and those of opening. How it ends is counted over the believed sets of faults, so assemblies that fail together do.
 */
export function partOut(item: Item, judged: Judged, prices: Prices, items: ReadonlyMap<string, Item>): PartOut {
  const { model, belief } = judged;
  const picks = picksOf(item, judged, prices, items);
  const opening = item.stage === 'closed' && picks.length > 0 ? model.file.opening_minutes.open : 0;
  const minutes = opening + picks.reduce((sum, pick) => sum + pick.minutes, 0);
  const costMinor = (minutes / 60) * prices.hourMinor;
  const spared = worthOf(picks, (pick) => pick.spared);
  const list = merged([
    ...belief.sets.map(({ faults, chance }) => ({
      valueMinor: worthOf(picks, (pick) => (isHit(pick, faults) ? 0 : 1)) - costMinor,
      chance,
    })),
    { valueMinor: spared - costMinor, chance: belief.unknown },
  ]);
  return { outcomes: list, valueMinor: meanOf(list), minutes, slots: picks.map(({ slot }) => slot), why: whyOf(picks, minutes, prices) };
}

const isHit = (pick: Pick, faults: readonly string[]): boolean => faults.some((fault) => pick.faults.has(fault));

const worthOf = (picks: readonly Pick[], well: (pick: Pick) => number): number =>
  picks.reduce((sum, pick) => sum + pick.valueMinor * well(pick), 0);

function picksOf(item: Item, judged: Judged, prices: Prices, items: ReadonlyMap<string, Item>): Pick[] {
  const { model } = judged;
  return model.file.slots
    .filter((slot) => slotContent(item, slot.id, items, model).holds !== 'nothing')
    .map((slot) => pickOf(judged, slot))
    .filter((pick) => pick.valueMinor * pick.well > (pick.minutes / 60) * prices.hourMinor);
}

function pickOf(judged: Judged, slot: Model['file']['slots'][number]): Pick {
  const { model } = judged;
  const blocks = blocksOfSlot(model.file, slot.id);
  return {
    slot: slot.id,
    name: slot.name,
    valueMinor: slot.value,
    well: slotWell(judged, slot.id),
    minutes: slot.minutes,
    faults: faultsIn(model, blocks),
    spared: shareSpared(model, blocks),
  };
}

function whyOf(picks: readonly Pick[], minutes: number, prices: Prices): string[] {
  if (picks.length === 0) return ['No assembly of it is worth the minutes of taking it out.'];
  const each = picks.map(
    (pick) =>
      `${pick.name}: ${money(pick.valueMinor, prices.currency)} × ${percent(pick.well)} that it is well = ${money(pick.valueMinor * pick.well, prices.currency)}.`,
  );
  return [...each, `${minutesText(minutes)} of taking apart cost ${money((minutes / 60) * prices.hourMinor, prices.currency)}.`];
}
