import { feeOf, tableOn, type Selling } from '../../core/market/index.ts';
import { median } from '../../core/numeric/index.ts';
import { costOf } from '../books/carried.ts';
import type { Model } from '../models/index.ts';
import type { BenchState, FeeRow, Item } from '../state.ts';
import { dayNumber } from './day-number.ts';
import { postageOf } from './postage-of.ts';

/** Space and money that an unsold unit binds, a day, as a share of its price: about 2 % a month. Common practice, no source. */
const WAIT_SHARE = 0.0007;
/** Days in which the next unit is ready. Common practice, no source. */
const MAKE_DAYS = 14;
/** Returns that a bench without history reckons with: one of twenty-five, as if that many had been sold. Common practice, no source. */
const RETURNS_BEFORE = { returned: 1, sold: 25 };

/** The fee tables of a place, with days as numbers. */
const tablesOf = (rows: readonly FeeRow[], place: string) =>
  rows.filter((row) => row.place === place).map((row) => ({ ...row, fromDay: dayNumber(row.fromDay) }));

/** What a place takes of a price at a time: its own table where the person gave one, the usual fee in per cent otherwise. */
export function feeAt(state: Readonly<BenchState>, place: string, at: string, priceMinor: number): number {
  const table = tableOn(tablesOf(state.fees, place), at === '' ? 0 : dayNumber(at));
  return table ? feeOf(table, Math.max(0, priceMinor)) : (Math.max(0, priceMinor) * state.settings.feePercent) / 100;
}

/** Chance that a sold unit comes back, as the bench has learned it: mean of a beta belief. */
export function returnChance(state: Readonly<BenchState>): number {
  const units = [...state.items.values()].filter(({ kind }) => kind === 'unit');
  const returned = units.reduce((sum, { returns }) => sum + returns, 0);
  const sold = units.filter(({ sale }) => sale !== null).length + returned;
  return (RETURNS_BEFORE.returned + returned) / (RETURNS_BEFORE.sold + sold);
}

/** Selling one unit of a model at a place: what is left of a price, and what waiting and the next one cost. */
export function sellingOf(state: Readonly<BenchState>, model: Model, item: Item | null, fairMinor: number, place: string): Selling {
  const { newestAt } = state;
  const back = returnChance(state);
  const postage = postageOf(state, model);
  const leaves = (price: number): number => price - feeAt(state, place, newestAt, price) - postage;
  return {
    fairMinor,
    net: (price) => leaves(price) - back * (price - leaves(price) + postage),
    waitMinorPerDay: WAIT_SHARE * fairMinor,
    giveUpMinor: Math.max(0, leaves(model.file.prices.for_parts)),
    costMinor: item ? spentOn(state, item) : typicalSpent(state, model),
    makeDays: MAKE_DAYS,
  };
}

/** Money and hours that went into an item. */
const spentOn = ({ settings }: Readonly<BenchState>, item: Item): number => costOf(item) + (item.minutes * settings.hourValueMinor) / 60;

/** What a sold unit of the model had cost, in the middle; what a faulty one costs with an hour of work while none was sold. */
function typicalSpent(state: Readonly<BenchState>, model: Model): number {
  const sold = [...state.items.values()].filter(({ kind, modelId, sale }) => kind === 'unit' && modelId === model.file.id && sale !== null);
  if (sold.length > 0) return median(sold.map((item) => spentOn(state, item)));
  return model.file.prices.for_parts + state.settings.hourValueMinor;
}
