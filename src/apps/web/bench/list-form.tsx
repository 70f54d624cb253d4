import { useState } from 'react';
import { listItem } from '../actions/list-item.ts';
import { AskAdvice } from '../market/ask-advice.tsx';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { useUnit } from './unit-context.ts';

/** It stands for sale: where, and for how much. */
export function ListForm() {
  const { file, model, bench } = useUnit();
  const { record, busy } = useRecorder();
  const [priceMinor, setPriceMinor] = useState<number | null>(model.currency === bench.currency ? model.prices.working : null);
  const [place, setPlace] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (priceMinor !== null) void record(listItem(file.row.id, priceMinor, place));
      }}
    >
      {file.row.kind === 'unit' && <AskAdvice itemId={file.row.id} currency={bench.currency} take={setPriceMinor} />}
      <div className="fields">
        <MoneyField
          label="Asking price"
          currency={bench.currency}
          valueMinor={priceMinor}
          onChange={setPriceMinor}
          required
          hint="Starts at what a working one usually brings"
        />
        <Field label="Where it is for sale">
          <input value={place} required maxLength={200} onChange={(event) => setPlace(event.target.value)} />
        </Field>
      </div>
      <button type="submit" className="main" disabled={busy}>
        It is listed
      </button>
    </form>
  );
}
