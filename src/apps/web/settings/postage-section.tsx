import { useState } from 'react';
import type { BenchView } from '../../../bench/views/index.ts';
import { setPostage } from '../actions/set-postage.ts';
import { money } from '../format/money.ts';
import { day } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Section } from '../ui/section.tsx';

interface Band {
  readonly upToG: number;
  readonly priceMinor: number | null;
}

const MOST_BANDS = 30;
const FIRST: readonly Band[] = [{ upToG: 2000, priceMinor: null }];

/** What parcels cost to send by their weight, as tables of the person's own with the day from which they hold. */
export function PostageSection({ currency, postage }: Pick<BenchView, 'currency' | 'postage'>) {
  return (
    <Section id="postage" title="Postage by weight">
      {postage.length === 0 ? (
        <p className="muted">No table yet: the usual postage above counts for every parcel.</p>
      ) : (
        <ul className="plain-list">
          {postage.map((table, i) => (
            <li key={`${table.from_day} ${i}`}>
              From {day(table.from_day)}:{' '}
              {table.bands.map(({ up_to_g: end, price_minor: price }) => `up to ${end} g ${money(price, currency)}`).join(', ')}
            </li>
          ))}
        </ul>
      )}
      <PostageForm currency={currency} />
      <p className="small muted">
        It counts for models whose file says what one weighs, with 150 g for the box; a parcel too heavy for the table counts as usual.
      </p>
    </Section>
  );
}

function PostageForm({ currency }: { readonly currency: string }) {
  const { record, busy } = useRecorder();
  const [fromDay, setFromDay] = useState(() => new Date().toISOString().slice(0, 10));
  const [bands, setBands] = useState(FIRST);
  const change = (at: number, by: Partial<Band>): void => setBands(bands.map((band, i) => (i === at ? { ...band, ...by } : band)));
  const priced = bands.flatMap(({ upToG, priceMinor }) => (priceMinor === null ? [] : [{ upToG, priceMinor }]));
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setPostage(fromDay, priced));
      }}
    >
      <Field label="From the day">
        <input type="date" value={fromDay} required onChange={(event) => setFromDay(event.target.value)} />
      </Field>
      {bands.map((band, i) => (
        // oxlint-disable-next-line react/no-array-index-key -- bands have no name but their place
        <div key={i} className="fields">
          <NumberField
            label={`Parcel ${i + 1}: up to so many grams`}
            value={band.upToG}
            min={1}
            onChange={(upToG) => change(i, { upToG })}
          />
          <MoneyField
            label={`Parcel ${i + 1}: costs`}
            currency={currency}
            valueMinor={band.priceMinor}
            onChange={(priceMinor) => change(i, { priceMinor })}
            required
          />
        </div>
      ))}
      <div className="row">
        <button
          type="button"
          disabled={bands.length >= MOST_BANDS}
          onClick={() => setBands([...bands, { upToG: 2 * (bands.at(-1)?.upToG ?? 500), priceMinor: null }])}
        >
          One more weight
        </button>
        <button type="button" disabled={bands.length < 2} onClick={() => setBands(bands.slice(0, -1))}>
          One less
        </button>
        <button type="submit" disabled={busy || priced.length < bands.length}>
          Keep this table of postage
        </button>
      </div>
    </form>
  );
}
