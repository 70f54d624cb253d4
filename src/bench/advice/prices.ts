import type { Model } from '../models/index.ts';
import type { Settings } from '../state.ts';
import { money } from './say.ts';

/** What a unit of a model brings, after fee and postage, in minor units taken as the bench's currency. */
export interface Prices {
  readonly workingMinor: number;
  /** Sold as it is, for parts; not below 0, for nobody must sell. */
  readonly forPartsMinor: number;
  /** Standard deviation of the logarithm of the price. */
  readonly spread: number;
  readonly hourMinor: number;
  readonly currency: string;
  /** How the two prices come about, and what was assumed. */
  readonly whyWorking: string;
  readonly whyForParts: string;
  readonly assumed: readonly string[];
}

/** Typical prices of the model, or the price that is asked for a unit already offered, less the bench's usual fee and postage. */
export function pricesOf(model: Model, settings: Settings, askingMinor: number | null): Prices {
  const { prices, currency } = model.file;
  const net = (price: number): number => price * (1 - settings.feePercent / 100) - settings.postageOutMinor;
  const working = askingMinor ?? prices.working;
  const text = (minor: number): string => money(minor, settings.currency);
  const less = `less ${settings.feePercent} % fee and ${text(settings.postageOutMinor)} postage`;
  const source = askingMinor === null ? 'typically sells for' : 'is offered at';
  return {
    workingMinor: net(working),
    forPartsMinor: Math.max(0, net(prices.for_parts)),
    spread: prices.spread,
    hourMinor: settings.hourValueMinor,
    currency: settings.currency,
    whyWorking: `A working one ${source} ${text(working)}; ${less} leaves ${text(net(working))}.`,
    whyForParts: `A faulty one typically sells for ${text(prices.for_parts)}; ${less} leaves ${text(Math.max(0, net(prices.for_parts)))}.`,
    assumed:
      currency === settings.currency
        ? []
        : [`Assumed: prices of this model are in ${currency} and are taken one for one as ${settings.currency}; no rate is set.`],
  };
}
