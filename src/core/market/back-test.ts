import { fitPrices, priceOf } from './fit-prices.ts';
import type { PricePrior } from './price-prior.ts';
import type { Sale } from './sale.ts';

export interface BackTest {
  /** Sales that were forecast. */
  readonly count: number;
  /** Share of them whose price lay inside the interval that was said before; NaN of none. */
  readonly coverage: number;
  /** Mean of |log(price / middle)|: 0.1 is about ten per cent. */
  readonly miss: number;
}

/** Each sale is forecast from those of earlier days only. The first `skip` are not counted. */
export function backTest(
  sales: readonly Sale[],
  prior: PricePrior,
  options: { readonly level?: number; readonly skip?: number } = {},
): BackTest {
  const order = [...sales].sort((a, b) => a.day - b.day);
  const tried = order.slice(options.skip ?? 0).map((sale) => {
    const earlier = order.filter(({ day }) => day < sale.day);
    const said = priceOf(fitPrices(earlier, prior, sale.day), sale, options.level);
    const inside = sale.priceMinor >= said.lowMinor && sale.priceMinor <= said.highMinor;
    return { inside, miss: Math.abs(Math.log(sale.priceMinor / said.middleMinor)) };
  });
  const mean = (of: (each: (typeof tried)[number]) => number): number => tried.reduce((sum, each) => sum + of(each), 0) / tried.length;
  return { count: tried.length, coverage: mean(({ inside }) => (inside ? 1 : 0)), miss: mean(({ miss }) => miss) };
}
