import type { Claim } from '../../../bench/events/index.ts';
import type { Draft, Gesture } from './gesture.ts';

export interface LotAnswer {
  readonly lotId: string;
  readonly listingId?: string;
  readonly title: string;
  readonly seller: string;
  readonly priceMinor: number;
  readonly postageMinor: number;
  readonly taxMinor: number;
  readonly currency: string;
  readonly rate: number;
  readonly modelId: string;
  readonly units: readonly {
    readonly itemId: string;
    readonly modelId?: string;
    readonly name: string;
    readonly expectedValueMinor: number;
  }[];
  /** What the seller says; it holds for each unit of the lot. */
  readonly claims: readonly Claim[];
}

/**
 * A lot bought: its units stand in the pile, and its cost is split over them by expected value. The claims of a listing
 * that was weighed count by themselves; without one they are said of each unit here.
 */
export const buyLot = (lot: LotAnswer): Gesture => ({
  said: `${lot.title} bought`,
  drafts: [lotDraft(lot), ...(lot.listingId === undefined ? lot.units.flatMap((unit) => claimDrafts(unit.itemId, lot.claims)) : [])],
});

export const lotDraft = (lot: LotAnswer): Draft => ({
  kind: 'lot-bought',
  body: {
    lot_id: lot.lotId,
    ...(lot.listingId === undefined ? {} : { listing_id: lot.listingId }),
    title: lot.title,
    seller: lot.seller,
    price_minor: lot.priceMinor,
    postage_minor: lot.postageMinor,
    tax_minor: lot.taxMinor,
    currency: lot.currency,
    rate: lot.rate,
    items: lot.units.map((unit) => ({
      item_id: unit.itemId,
      name: unit.name,
      kind: 'unit',
      model_id: unit.modelId ?? lot.modelId,
      expected_value_minor: unit.expectedValueMinor,
    })),
  },
});

export const claimDrafts = (itemId: string, claims: readonly Claim[]): Draft[] =>
  claims.map((claim) => ({ kind: 'claim-made', body: { item_id: itemId, claim } }));
