import { priceOf } from '../../core/market/index.ts';
import type { PileModel } from '../../core/planning/index.ts';
import { pricesOf, type Prices } from '../advice/prices.ts';
import { postageOf } from '../market/postage-of.ts';
import { pricesKnown } from '../market/prices-known.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { planSlots, type PlanSlot } from './plan-slots.ts';

/** Proving, photographs and the offer of a finished unit, minutes. Common practice, no source. */
const FINISH_MINUTES = 15;
/** How often a finished unit has one of its assemblies from elsewhere, for the minutes of the change. Common practice, no source. */
const MOVED_SHARE = 0.5;

/** A model as the plan sees it, with prices as the advice has them; what a price loses without its own screen and shell comes from the market. */
export function planModel(state: Readonly<BenchState>, model: Model): PileModel {
  const prices = pricesOf(model, state.settings, null, postageOf(state, model));
  const slots = planSlots(model.file);
  const own = slots.filter(({ original }) => original).map(({ id }) => id);
  const lostMinor = own.length > 0 ? lostWithout(state, model, prices) : 0;
  return {
    id: model.file.id,
    slots: slots.map((slot) => ({ id: slot.id, ...leftovers(slot, slots, prices) })),
    buildMinutes: FINISH_MINUTES + MOVED_SHARE * meanOf(slots.map(({ minutes }) => minutes)),
    soldMinor: prices.workingMinor - lostMinor,
    eachFurther: 1,
    original: { slots: own, moreMinor: lostMinor },
    priceSpread: prices.spread,
  };
}

/** What of the net price is lost when its screen or shell is not its own. */
function lostWithout(state: Readonly<BenchState>, model: Model, { workingMinor, postageMinor }: Prices): number {
  const fit = pricesKnown(state, model);
  const at = (original: number): number => priceOf(fit, { condition: 'B', complete: null, original }).middleMinor;
  return Math.max(0, workingMinor + postageMinor) * Math.max(0, 1 - at(0) / at(1));
}

/** A working one is kept in the drawer, the minutes of taking it out paid; failed, it is its part of a unit sold for parts. */
function leftovers({ valueMinor, minutes }: PlanSlot, slots: readonly PlanSlot[], prices: Prices) {
  const whole = slots.reduce((sum, slot) => sum + slot.valueMinor, 0);
  const share = whole > 0 ? valueMinor / whole : 1 / slots.length;
  const { forPartsPriceMinor: price, feePercent, postageMinor } = prices;
  const soldMinor = Math.max(0, (price * (1 - feePercent / 100) - postageMinor) * share);
  const keptMinor = Math.max(0, valueMinor - (minutes * prices.hourMinor) / 60);
  return { works: { soldMinor, keptMinor, scrapMinor: 0 }, failed: { soldMinor, keptMinor: 0, scrapMinor: 0 } };
}

const meanOf = (values: readonly number[]): number => (values.length === 0 ? 0 : values.reduce((a, b) => a + b, 0) / values.length);
