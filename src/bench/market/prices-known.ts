import { fitPrices, weakPrior, type PriceFit, type PricePrior } from '../../core/market/index.ts';
import type { Model } from '../models/index.ts';
import type { BenchState } from '../state.ts';
import { dayNumber } from './day-number.ts';
import { salesOf } from './sales-of.ts';

/** The model's typical price as a weak belief: it stands as long as sales are few. */
export const priorOf = ({ file }: Model): PricePrior => weakPrior(Math.max(1, file.prices.working), Math.max(0.05, file.prices.spread));

/** What sales so far say of the prices of a model, as of the newest event or the newest sale. */
export function pricesKnown(state: Readonly<BenchState>, model: Model, sales = salesOf(state, model)): PriceFit {
  const today = Math.max(state.newestAt === '' ? 0 : dayNumber(state.newestAt), sales.at(-1)?.day ?? 0);
  return fitPrices(sales, priorOf(model), today);
}
