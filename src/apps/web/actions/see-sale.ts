import type { Gesture } from './gesture.ts';

export interface SeenSale {
  readonly saleId: string;
  readonly modelId: string;
  readonly day: string;
  readonly priceMinor: number;
  readonly currency: string;
  readonly rate: number;
  readonly condition: 'A' | 'B' | 'C' | 'D' | 'parts';
  readonly complete?: number | undefined;
  readonly original?: number | undefined;
  readonly text: string;
}

/** Sales that others made, written down. */
export const seeSales = (sales: readonly SeenSale[]): Gesture => ({
  said: sales.length === 1 ? 'a sale that was seen' : `${sales.length} sales that were seen`,
  drafts: sales.map((sale) => ({
    kind: 'sale-seen',
    body: {
      sale_id: sale.saleId,
      model_id: sale.modelId,
      day: sale.day,
      price_minor: sale.priceMinor,
      currency: sale.currency,
      rate: sale.rate,
      condition: sale.condition,
      ...(sale.complete === undefined ? {} : { complete: sale.complete }),
      ...(sale.original === undefined ? {} : { original: sale.original }),
      text: sale.text,
    },
  })),
});
