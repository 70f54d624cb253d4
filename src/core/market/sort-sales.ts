import type { PriceFit } from './fit-prices.ts';
import type { Sale } from './sale.ts';

/** Pairs of sales that look like one written down twice: same price, condition and day or the day after. The later id of each is named first. */
export function likelyDuplicates(sales: readonly Sale[]): { readonly id: string; readonly of: string }[] {
  return sales.flatMap((sale, i) => {
    const twin = sales.slice(0, i).find((other) => isAlike(sale, other));
    return twin ? [{ id: sale.id, of: twin.id }] : [];
  });
}

const isAlike = (a: Sale, b: Sale): boolean =>
  a.priceMinor === b.priceMinor &&
  a.condition === b.condition &&
  a.complete === b.complete &&
  a.original === b.original &&
  Math.abs(a.day - b.day) <= 1;

/** A sale of less trust than this stands out: it is more than 2.7 spreads off. */
const OUTLYING = 0.5;

/** Sales that stand out from what their features say, wildest first. They stay in and pull less. */
export const outlyingSales = ({ trust }: PriceFit): { readonly id: string; readonly trust: number }[] =>
  [...trust]
    .filter(([, share]) => share < OUTLYING)
    .map(([id, share]) => ({ id, trust: share }))
    .sort((a, b) => a.trust - b.trust);
