import { useState } from 'react';
import type { ModelRow } from '../../../bench/views/index.ts';
import { buyBag } from '../actions/buy-bag.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { defaultModel } from '../ui/model-options.ts';
import { MoneyField } from '../ui/money-field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { PartPicker, partId, type PickedPart } from './part-picker.tsx';

/** A bag of loose parts that was bought. */
export function AddBagForm({ currency, models }: { readonly currency: string; readonly models: readonly ModelRow[] }) {
  const { record, busy } = useRecorder();
  const [part, setPart] = useState<PickedPart>({ modelId: '', part: '', name: '' });
  const [count, setCount] = useState(10);
  const [priceMinor, setPriceMinor] = useState<number | null>(null);
  const [place, setPlace] = useState('');
  const picked = { ...part, modelId: part.modelId || defaultModel(models) };
  const add = async (price: number): Promise<void> => {
    const bag = { bagId: newId('bag'), part: partId(picked), name: picked.name, count, priceMinor: price, currency, place };
    if (!(await record(buyBag(bag)))) return;
    setPart({ modelId: picked.modelId, part: '', name: '' });
    setPriceMinor(null);
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (priceMinor !== null) void add(priceMinor);
      }}
    >
      <div className="fields">
        <PartPicker models={models} value={picked} onChange={setPart} />
        <NumberField label="How many" value={count} min={1} onChange={(typed) => setCount(Math.round(typed))} />
        <MoneyField label="Paid for the bag" currency={currency} valueMinor={priceMinor} onChange={setPriceMinor} required />
        <Field label="Where it lies">
          <input value={place} onChange={(event) => setPlace(event.target.value)} />
        </Field>
      </div>
      <button type="submit" className="main" disabled={busy}>
        Add the bag
      </button>
    </form>
  );
}
