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

/** The usual fee on a price: per cent, to the nearest minor unit. */
export const usualFeeMinor = (priceMinor: number, feePercent: number): number => Math.round((priceMinor * feePercent) / 100);
