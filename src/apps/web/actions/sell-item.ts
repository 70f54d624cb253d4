import { feeOf, tableOn } from '../../../core/market/index.ts';
import { dayNumber } from '../../../bench/market/day-number.ts';
import type { BenchView } from '../../../bench/views/index.ts';
import type { Gesture } from './gesture.ts';

export interface SaleAnswer {
  readonly itemId: string;
  readonly as: 'working' | 'for-parts';
  readonly priceMinor: number;
  readonly postageChargedMinor: number;
  readonly feesMinor: number;
  readonly postageMinor: number;
  readonly currency: string;
  readonly rate: number;
  readonly buyer: string;
}

/** Sold: what came in, and what selling took. */
export const sellItem = (sale: SaleAnswer): Gesture => ({
  said: sale.as === 'working' ? 'sold as working' : 'sold for parts',
  drafts: [
    {
      kind: 'sold',
      body: {
        item_id: sale.itemId,
        as: sale.as,
        price_minor: sale.priceMinor,
        postage_charged_minor: sale.postageChargedMinor,
        fees_minor: sale.feesMinor,
        postage_minor: sale.postageMinor,
        currency: sale.currency,
        rate: sale.rate,
        buyer: sale.buyer,
      },
    },
  ],
});

/** What a place takes of a price on a day: by the person's own table of it where there is one by then, else the usual fee in per cent, to the nearest minor unit. */
export function usualFeeMinor(
  priceMinor: number,
  { fee_percent: percent, fees }: Pick<BenchView, 'fee_percent' | 'fees'>,
  place: string,
  day: string,
): number {
  const tables = fees
    .filter((table) => table.place === place)
    .map(({ from_day, bands, fixed_minor: fixedMinor, cap_minor: capMinor }) => ({
      fromDay: dayNumber(from_day),
      bands: bands.map((band) => ({ upToMinor: band.up_to_minor, percent: band.percent })),
      fixedMinor,
      capMinor,
    }));
  const table = tableOn(tables, dayNumber(day));
  return table ? feeOf(table, Math.max(0, priceMinor)) : Math.round((priceMinor * percent) / 100);
}
