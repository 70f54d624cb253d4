import { useLocation } from 'wouter';
import type { ModelRow, OutlookView } from '../../../bench/views/index.ts';
import { sellerName } from '../actions/seller-name.ts';
import { keepListing, type ListingAnswer } from '../actions/keep-listing.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { BuyForm } from './buy-form.tsx';
import type { ListingForm } from './listing-form.ts';

interface BuySectionProps {
  readonly form: ListingForm;
  readonly outlook: OutlookView;
  readonly models: readonly ModelRow[];
  /** The listing is dealt with: the form may start anew. */
  readonly done: () => void;
}

/** Keep the listing on the watch list, or buy it. */
export function BuySection({ form, outlook, models, done }: BuySectionProps) {
  const { record, busy } = useRecorder();
  const [, go] = useLocation();
  const nameOf = (modelId: string): string => models.find((model) => model.id === modelId)?.name ?? modelId;
  const modelName = nameOf(form.modelId);
  const kinds = [{ modelId: form.modelId, count: form.count }, ...form.others].map((kind) => ({ ...kind, name: nameOf(kind.modelId) }));
  const listing: ListingAnswer = {
    ...form,
    listingId: '',
    title: form.title.trim() || modelName,
    seller: sellerName(form.seller),
    priceMinor: form.priceMinor ?? 0,
    postageMinor: form.postageMinor ?? 0,
    taxMinor: form.taxMinor ?? 0,
    closesAt: form.closes === '' ? null : new Date(form.closes).toISOString(),
  };
  const keep = async (): Promise<void> => {
    if (await record(keepListing({ ...listing, listingId: newId('listing') }))) done();
  };
  return (
    <Section id="deal" title="Then">
      <div className="form">
        <button type="button" disabled={busy} onClick={() => void keep()}>
          Keep it on the watch list
        </button>
        <Fold title="I bought it">
          <BuyForm
            key={JSON.stringify([kinds, form.priceMinor, form.postageMinor, form.taxMinor, listing.title])}
            listing={listing}
            isWeighed={false}
            kinds={kinds}
            valueMinor={outlook.value_minor}
            bought={() => go('/pile')}
          />
        </Fold>
      </div>
    </Section>
  );
}
