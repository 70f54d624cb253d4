import { priceOf, type Offer, type PriceFit } from '../../core/market/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { daysBetween } from './day-number.ts';
import { conditionOf, originalShare } from './sales-of.ts';

/** How long each unit of a model was on offer at each price, and whether that sold it; those still on offer count up to the newest event. */
export function offersOf(state: Readonly<BenchState>, model: Model, fit: PriceFit): Offer[] {
  return [...state.items.values()]
    .filter(({ kind, modelId }) => kind === 'unit' && modelId === model.file.id)
    .flatMap((item) => {
      const fair = priceOf(fit, { condition: conditionOf(item), complete: null, original: originalShare(state, model, item) }).middleMinor;
      return item.offers
        .filter(({ priceMinor }) => priceMinor > 0)
        .map(({ priceMinor, from, until, sold }) => ({
          askShare: priceMinor / fair,
          days: daysBetween(from, until ?? state.newestAt),
          sold,
        }));
    });
}
