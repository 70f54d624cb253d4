import { useState } from 'react';
import { CURRENCIES } from '../../../core/quantity/index.ts';
import type { BenchView } from '../../../bench/views/index.ts';
import { setBench } from '../actions/set-bench.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';

/** Name, currency, worth of an hour, usual fee and postage. */
export function BenchForm({ bench }: { readonly bench: BenchView }) {
  const { record, busy } = useRecorder();
  const [name, setName] = useState(bench.name);
  const [currency, setCurrency] = useState(bench.currency);
  const [hourMinor, setHourMinor] = useState<number | null>(bench.hour_value_minor);
  const [feePercent, setFeePercent] = useState(bench.fee_percent);
  const [postageMinor, setPostageMinor] = useState<number | null>(bench.postage_out_minor);
  const currencies = [...new Set([bench.currency, ...CURRENCIES])].map((id) => ({ id, name: id }));
  const save = (): void =>
    void record(
      setBench({
        ...(name.trim() === '' ? {} : { name }),
        ...(currency === bench.currency ? {} : { currency }),
        ...(hourMinor === null ? {} : { hour_value_minor: hourMinor }),
        fee_percent: feePercent,
        ...(postageMinor === null ? {} : { postage_out_minor: postageMinor }),
      }),
    );
  return (
    <Section id="bench-settings" title="The bench">
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          save();
        }}
      >
        <div className="fields">
          <Field label="Name">
            <input value={name} maxLength={200} onChange={(event) => setName(event.target.value)} />
          </Field>
          {bench.can_set_currency ? (
            <Pick label="Currency of the books" options={currencies} value={currency} onChange={setCurrency} />
          ) : (
            <p className="field">
              <span className="field-label">Currency of the books</span>
              <span>{bench.currency}</span>
              <span className="field-hint">Fixed since the first money was noted</span>
            </p>
          )}
          <MoneyField
            key={`hour-${currency}`}
            label="An hour of yours is worth"
            currency={currency}
            valueMinor={hourMinor}
            onChange={setHourMinor}
            hint="Every advice counts your minutes at this"
          />
          <NumberField label="Usual selling fee, %" value={feePercent} max={90} step="any" onChange={setFeePercent} />
          <MoneyField
            key={`postage-${currency}`}
            label="Usual postage of a sold unit"
            currency={currency}
            valueMinor={postageMinor}
            onChange={setPostageMinor}
          />
        </div>
        <button type="submit" className="main" disabled={busy}>
          Save
        </button>
      </form>
    </Section>
  );
}
