import { CURRENCIES } from '../../../core/quantity/index.ts';
import type { BenchView, ModelRow } from '../../../bench/views/index.ts';
import { useModel } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { claimsFor } from '../ui/claims.ts';
import { ClaimsInput } from '../ui/claims-input.tsx';
import { Field } from '../ui/field.tsx';
import { modelOptions } from '../ui/model-options.ts';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';
import type { ListingForm } from './listing-form.ts';
import { ListingPhotos } from './listing-photos.tsx';
import { OtherKinds } from './other-kinds.tsx';
import { ReadWords } from './read-words.tsx';

interface ListingFieldsProps {
  readonly form: ListingForm;
  readonly change: (part: Partial<ListingForm>) => void;
  readonly bench: BenchView;
  readonly models: readonly ModelRow[];
}

/** The listing, as its page says it. */
export function ListingFields({ form, change, bench, models }: ListingFieldsProps) {
  const model = useModel(form.modelId === '' ? undefined : form.modelId);
  const currencies = [...new Set([bench.currency, ...CURRENCIES])].map((id) => ({ id, name: id }));
  return (
    <Section id="listing" title="The listing">
      <div className="form">
        <Field label="Title" hint="As the listing calls it; needed only to keep or buy it">
          <input value={form.title} maxLength={200} onChange={(event) => change({ title: event.target.value })} />
        </Field>
        <div className="fields">
          <Pick label="Model" options={modelOptions(models)} value={form.modelId} onChange={(modelId) => change({ modelId })} />
          <NumberField label="How many" value={form.count} min={1} max={200} onChange={(count) => change({ count: Math.round(count) })} />
          <Field label="Seller">
            <input value={form.seller} maxLength={200} onChange={(event) => change({ seller: event.target.value })} />
          </Field>
          <Pick
            label="Currency"
            options={currencies}
            value={form.currency}
            onChange={(currency) => change({ currency, rate: currency === bench.currency ? 1 : form.rate })}
          />
          <MoneyField
            key={`price-${form.currency}`}
            label="Price asked"
            currency={form.currency}
            valueMinor={form.priceMinor}
            onChange={(priceMinor) => change({ priceMinor })}
            required
          />
          <MoneyField
            key={`postage-${form.currency}`}
            label="Postage"
            currency={form.currency}
            valueMinor={form.postageMinor}
            onChange={(postageMinor) => change({ postageMinor })}
          />
          <MoneyField
            key={`tax-${form.currency}`}
            label="Import tax and duty"
            currency={form.currency}
            valueMinor={form.taxMinor}
            onChange={(taxMinor) => change({ taxMinor })}
          />
          <Field label="Closes">
            <input type="datetime-local" value={form.closes} onChange={(event) => change({ closes: event.target.value })} />
          </Field>
          {form.currency !== bench.currency && (
            <NumberField
              label={`${bench.currency} for one ${form.currency}`}
              value={form.rate}
              min={0.000001}
              step="any"
              onChange={(rate) => change({ rate })}
            />
          )}
        </div>
        <OtherKinds others={form.others} models={models} change={(others) => change({ others })} />
        <Field label="Its words" hint="Paste them: they are read here, and kept beside the listing for a dispute">
          <textarea value={form.text} maxLength={4000} rows={4} onChange={(event) => change({ text: event.target.value })} />
        </Field>
        <ListingPhotos hashes={form.photos} change={(photos) => change({ photos })} />
        {form.modelId !== '' && (
          <Answer query={model}>
            {(page) => (
              <>
                {form.text.trim() !== '' && (
                  <ReadWords
                    key={form.modelId}
                    text={form.text}
                    model={page.file}
                    taught={bench.taught_words}
                    use={(claims, units, ofEach) => change({ claims, count: Math.max(form.count, units), ofEach })}
                  />
                )}
                <ClaimsInput
                  model={page.file}
                  claims={claimsFor(page.file, form.claims)}
                  onChange={(claims) => change({ claims, ofEach: [] })}
                />
              </>
            )}
          </Answer>
        )}
      </div>
    </Section>
  );
}
