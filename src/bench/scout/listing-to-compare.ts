import type { ListingToCompare } from '../views/index.ts';
import type { ListingLine } from './listings-csv.ts';

/** A line of a table of listings as the comparison asks of it; a line that names no model is of this one. */
export const listingToCompare = (line: ListingLine, modelId: string): ListingToCompare => ({
  title: line.title,
  price_minor: line.priceMinor,
  postage_minor: line.postageMinor,
  tax_minor: line.taxMinor,
  currency: line.currency,
  rate: line.rate,
  seller: line.seller,
  text: line.text,
  closes_at: line.closesAt,
  count: line.count,
  model_id: line.modelId || modelId,
});
