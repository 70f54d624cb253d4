import { convertMinor } from '../../core/quantity/index.ts';

/** The largest amount that the books take, in minor units of the bench's currency. */
export const MOST_MINOR = 1e12;

/**
 * An amount in the currency of the bench, at the rate typed with it (bench currency for one unit of the other), half
 * even. The bench's own currency is never converted. Null when the result is past `MOST_MINOR`.
 */
export function toBench(
  amountMinor: number,
  from: { readonly currency: string; readonly rate: number },
  benchCurrency: string,
): number | null {
  const converted = from.currency === benchCurrency ? amountMinor : convertMinor(amountMinor, from.currency, benchCurrency, from.rate);
  return Math.abs(converted) <= MOST_MINOR ? converted : null;
}
