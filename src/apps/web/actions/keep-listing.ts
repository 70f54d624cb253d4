import type { Claim } from '../../../bench/events/index.ts';
import type { Draft, Gesture } from './gesture.ts';

export interface ListingAnswer {
  readonly listingId: string;
  readonly title: string;
  readonly text: string;
  readonly seller: string;
  readonly modelId: string;
  readonly count: number;
  readonly priceMinor: number;
  readonly postageMinor: number;
  readonly taxMinor: number;
  /** ISO 8601 in UTC; null when it does not close. */
  readonly closesAt: string | null;
  readonly currency: string;
  readonly rate: number;
  readonly claims: readonly Claim[];
  /** Hashes of pictures that the bench keeps already. */
  readonly photos: readonly string[];
}

/** The listing as it stands, on the watch list. */
export const keepListing = (listing: ListingAnswer): Gesture => ({ said: 'on the watch list', drafts: [listingDraft(listing)] });

export const listingDraft = (listing: ListingAnswer): Draft => ({
  kind: 'listing-weighed',
  body: {
    listing_id: listing.listingId,
    title: listing.title,
    text: listing.text,
    seller: listing.seller,
    model_id: listing.modelId,
    count: listing.count,
    price_minor: listing.priceMinor,
    postage_minor: listing.postageMinor,
    currency: listing.currency,
    rate: listing.rate,
    claims: [...listing.claims],
    tax_minor: listing.taxMinor,
    photos: [...listing.photos],
    ...(listing.closesAt === null ? {} : { closes_at: listing.closesAt }),
  },
});
