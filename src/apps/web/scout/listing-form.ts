import type { Claim } from '../../../bench/events/index.ts';
import type { BenchView, LotQuestion, ModelRow, ScoutQuestion } from '../../../bench/views/index.ts';
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
  readonly taxMinor: number | null;
  /** As the control of date and time gives it, in the person's own time zone; empty for none. */
  readonly closes: string;
  readonly currency: string;
  readonly rate: number;
  readonly claims: readonly Claim[];
  /** Hashes of its pictures, which the bench keeps already. */
  readonly photos: readonly string[];
  /** What is said of each unit, where the words tell them apart; empty where the claims are on all alike. */
  readonly ofEach: readonly (readonly Claim[])[];
  /** Units of other kinds in the same lot, of which nothing is said. */
  readonly others: readonly OtherKind[];
}

export interface OtherKind {
  readonly modelId: string;
  readonly count: number;
}

export const emptyListing = (bench: BenchView, models: readonly ModelRow[]): ListingForm => ({
  title: '',
  text: '',
  seller: '',
  modelId: defaultModel(models),
  count: 1,
  priceMinor: null,
  postageMinor: 0,
  taxMinor: 0,
  closes: '',
  currency: bench.currency,
  rate: 1,
  claims: [],
  photos: [],
  ofEach: [],
  others: [],
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
    tax_minor: form.taxMinor ?? 0,
    currency: form.currency,
    rate: form.rate,
    claims: [...form.claims],
  };
}

/** The same for the whole lot, other kinds in it included. */
export function lotQuestionOf(form: ListingForm): LotQuestion | null {
  const question = questionOf(form);
  if (!question) return null;
  const { model_id, count, claims, ...asked } = question;
  const others = form.others.map((other) => ({ model_id: other.modelId, count: other.count, claims: [] }));
  const alike = { model_id, count, claims };
  const each = form.ofEach.length === count ? form.ofEach.map((own) => ({ model_id, count: 1, claims: [...own] })) : [alike];
  return { ...asked, units: [...each, ...others] };
}
