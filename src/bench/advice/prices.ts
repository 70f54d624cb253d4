import type { Model, OwnPrice } from '../models/index.ts';
import type { Settings } from '../state.ts';
import type { Held } from './held.ts';
import { listed, lower, money, percent } from './say.ts';

/** What a unit of a model brings, after fee and postage, in minor units taken as the bench's currency. */
export interface Prices {
  readonly workingMinor: number;
  /** What a whole one typically sells for as it is, for parts, and what of each sale goes off: fee and postage. */
  readonly forPartsPriceMinor: number;
  readonly feePercent: number;
  readonly postageMinor: number;
  /** Standard deviation of the logarithm of the price. */
  readonly spread: number;
  readonly hourMinor: number;
  readonly currency: string;
  /** How the price of a working one comes about, and what was assumed. */
  readonly whyWorking: string;
  readonly assumed: readonly string[];
}

/** Typical prices of the model, or the price that is asked for a unit already offered, less the bench's usual fee and the postage. */
export function pricesOf(model: Model, settings: Settings, askingMinor: number | null, postageMinor: number): Prices {
  const { prices, currency } = model.file;
  const costs = { feePercent: settings.feePercent, postageMinor, currency: settings.currency };
  const working = askingMinor ?? prices.working;
  const workingMinor = net(working, costs);
  const source = askingMinor === null ? 'typically sells for' : 'is offered at';
  const learned = askingMinor === null && model.own?.price ? learnedWords(model.own.price, settings.currency) : '';
  return {
    ...costs,
    workingMinor,
    forPartsPriceMinor: prices.for_parts,
    spread: prices.spread,
    hourMinor: settings.hourValueMinor,
    whyWorking: `A working one ${source} ${money(working, costs.currency)}${learned}; ${leaves(workingMinor, costs)}`,
    assumed:
      currency === settings.currency
        ? []
        : [`Assumed: prices of this model are in ${currency} and are taken one for one as ${settings.currency}; no rate is set.`],
  };
}

const learnedWords = ({ shippedMinor, sales }: OwnPrice, currency: string): string =>
  ` (${money(shippedMinor, currency)} by its model, ${sales === 1 ? 'one known sale' : `${sales} known sales`} counted)`;

type Costs = Pick<Prices, 'feePercent' | 'postageMinor' | 'currency'>;

const net = (price: number, { feePercent, postageMinor }: Costs): number => price * (1 - feePercent / 100) - postageMinor;

const leaves = (minor: number, { feePercent, postageMinor, currency }: Costs): string =>
  `less ${feePercent} % fee and ${money(postageMinor, currency)} postage leaves ${money(minor, currency)}.`;

/**
 * What a unit brings sold as it is, for parts, after fee and postage: the price of a whole one in proportion to what it still
 * holds. Not below 0, for nobody must sell.
 */
export const forPartsMinor = (prices: Prices, { share }: Held): number => Math.max(0, net(prices.forPartsPriceMinor * share, prices));

/** How that comes about. */
export function whyForParts(prices: Prices, held: Held): string {
  const { currency, forPartsPriceMinor: price } = prices;
  const without = listed(held.lacks.map(lower));
  const part = `; without its ${without} it holds ${percent(held.share)} of that, ${money(price * held.share, currency)}`;
  const sells = `A faulty one typically sells for ${money(price, currency)}${held.lacks.length > 0 ? part : ''}`;
  return `${sells}; ${leaves(forPartsMinor(prices, held), prices)}`;
}
