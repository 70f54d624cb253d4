import { leastSquares, studentQuantile } from '../numeric/index.ts';
import { MarketError } from './market-error.ts';
import { coefficientsBefore, rowOf, type PricePrior } from './price-prior.ts';
import type { Features, Sale } from './sale.ts';

/** Beyond so many spreads a price pulls no harder; and the mean of the squares of what is left of a normal sample then. Huber (1964). */
const HUBER_TUNING = 1.345;
const HUBER_SQUARE = 0.7102;
const MOST_ROUNDS = 40;

/** A sale of that age weighs half of one of today. Common practice, no source. */
export const SALE_HALF_LIFE_DAYS = 180;

export interface PriceFit {
  /** Of the logarithm of the price, in the order of `rowOf`. */
  readonly coefficients: Float64Array;
  /** Covariance of the coefficients. */
  readonly covariance: readonly Float64Array[];
  /** Standard deviation of the logarithm of one price around what its features say. */
  readonly spread: number;
  readonly dof: number;
  /** Sum of the weights by age: how many fresh sales the own ones count as. */
  readonly sales: number;
  /** By sale: weight that its distance from the others left it, 0..1. */
  readonly trust: ReadonlyMap<string, number>;
}

export interface PriceInterval {
  readonly middleMinor: number;
  readonly lowMinor: number;
  readonly highMinor: number;
}

/** Weight of a sale of that age: half after each `halfLifeDays`. */
export const ageWeight = (ageDays: number, halfLifeDays: number): number => 2 ** (-Math.max(0, ageDays) / halfLifeDays);

/**
 * Regression of the logarithm of price on condition, completeness and originality: Huber's weights for wild prices (1964; the spread by his second
 * proposal, 1981), a weight by age, and a normal prior for each coefficient that stands in as long as sales are few. Throws `MarketError` on a price that is not above zero.
 */
export function fitPrices(sales: readonly Sale[], prior: PricePrior, today: number, halfLifeDays = SALE_HALF_LIFE_DAYS): PriceFit {
  const wrong = sales.find(({ priceMinor }) => !(priceMinor > 0));
  if (wrong) throw new MarketError('bad-price', `sale "${wrong.id}" has the price ${wrong.priceMinor}; a price is above zero`);
  const before = coefficientsBefore(prior);
  const rows = [...before.map((_, j) => before.map((__, k) => (j === k ? 1 : 0))), ...sales.map(rowOf)];
  const y = [...before.map(({ mean }) => mean), ...sales.map(({ priceMinor }) => Math.log(priceMinor))];
  const age = sales.map(({ day }) => ageWeight(today - day, halfLifeDays));
  const count = age.reduce((sum, weight) => sum + weight, 0);
  const dof = prior.saleSpreadWeight + count;
  let spread = prior.saleSpread;
  let trust = age.map(() => 1);
  for (let round = 0; ; round++) {
    const now = spread;
    const weights = [...before.map((each) => (now / each.spread) ** 2), ...age.map((weight, i) => weight * trust[i]!)];
    const fit = leastSquares(rows, y, weights)!;
    const left = fit.residuals.subarray(before.length);
    const reach = HUBER_TUNING * spread;
    const pull = age.reduce((sum, weight, i) => sum + weight * Math.min(Math.abs(left[i]!), reach) ** 2, 0) / HUBER_SQUARE;
    spread = Math.sqrt((prior.saleSpreadWeight * prior.saleSpread ** 2 + pull) / dof);
    trust = Array.from(left, (r) => Math.min(1, reach / Math.max(Math.abs(r), 1e-300)));
    if (round === MOST_ROUNDS || Math.abs(spread - now) < 1e-7 * now) {
      const covariance = fit.covariance.map((column) => column.map((value) => value * spread ** 2));
      const byId = new Map(sales.map(({ id }, i) => [id, trust[i]!]));
      return { coefficients: fit.coefficients, covariance, spread, dof, sales: count, trust: byId };
    }
  }
}

/** The price that one such thing may bring, with limits between which it lies with chance `level` (Student's t); minor units, not rounded. */
export const priceOf = (fit: PriceFit, features: Features, level = 0.8): PriceInterval => intervalOf(fit, features, level, fit.spread);

/** The middle of the prices that such things bring, with limits between which that middle lies with chance `level`: narrower than those of one price. */
export const typicalPriceOf = (fit: PriceFit, features: Features, level = 0.9): PriceInterval => intervalOf(fit, features, level, 0);

function intervalOf(fit: PriceFit, features: Features, level: number, single: number): PriceInterval {
  const row = rowOf(features);
  const middle = row.reduce((sum, x, j) => sum + x * fit.coefficients[j]!, 0);
  const own = row.reduce((sum, x, j) => sum + x * row.reduce((inner, z, k) => inner + z * fit.covariance[k]![j]!, 0), 0);
  const reach = studentQuantile((1 + level) / 2, fit.dof) * Math.sqrt(single ** 2 + own);
  return { middleMinor: Math.exp(middle), lowMinor: Math.exp(middle - reach), highMinor: Math.exp(middle + reach) };
}
