import type { Claim } from '../../../bench/events/index.ts';
import type { BenchView, ModelRow, ScoutQuestion } from '../../../bench/views/index.ts';
import { defaultModel } from '../ui/model-options.ts';

/** A listing as it is being typed in. */
export interface ListingForm {
  readonly title: string;
  readonly text: string;
  readonly seller: string;
  readonly modelId: string;
  readonly count: number;
  readonly priceMinor: number | null;
  readonly postageMinor: number | null;
  readonly currency: string;
  readonly rate: number;
  readonly claims: readonly Claim[];
}

export const emptyListing = (bench: BenchView, models: readonly ModelRow[]): ListingForm => ({
  title: '',
  text: '',
  seller: '',
  modelId: defaultModel(models),
  count: 1,
  priceMinor: null,
  postageMinor: 0,
  currency: bench.currency,
  rate: 1,
  claims: [],
});

/** The question to the bench; null while no price is given. */
export function questionOf(form: ListingForm): ScoutQuestion | null {
  if (form.priceMinor === null || form.modelId === '' || !(form.rate > 0) || !(form.count >= 1)) return null;
  return {
    model_id: form.modelId,
    seller: form.seller.trim(),
    count: form.count,
    price_minor: form.priceMinor,
    postage_minor: form.postageMinor ?? 0,
    currency: form.currency,
    rate: form.rate,
    claims: [...form.claims],
  };
}
