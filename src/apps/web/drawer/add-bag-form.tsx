import { useState } from 'react';
import { recordOf } from '../../../bench/fit/index.ts';
import type { ModelRow } from '../../../bench/views/index.ts';
import { buyBag } from '../actions/buy-bag.ts';
import { PATTERN_FILES, readPatterns, type NamedPattern } from '../fit/named-pattern.ts';
import { Troubles } from '../fit/troubles.tsx';
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
  const [terminals, setTerminals] = useState<NamedPattern | null>(null);
  /** A chosen file can only be let go of by another input. */
  const [added, setAdded] = useState(0);
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const picked = { ...part, modelId: part.modelId || defaultModel(models) };
  const add = async (price: number): Promise<void> => {
    const bag = {
      bagId: newId('bag'),
      part: partId(picked),
      name: picked.name,
      count,
      priceMinor: price,
      currency,
      place,
      pattern: terminals && recordOf(terminals.pattern),
    };
    if (!(await record(buyBag(bag)))) return;
    setPart({ modelId: picked.modelId, part: '', name: '' });
    setPriceMinor(null);
    setTerminals(null);
    setAdded(added + 1);
  };
  const take = async (files: FileList | null): Promise<void> => {
    const { read, troubles: found } = await readPatterns(files);
    setTroubles(found);
    setTerminals(read[0] ?? null);
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
        <Field label="Terminals, if there is a file" hint="A land pattern (.kicad_mod) or a table of pads (CSV)">
          <input key={added} type="file" accept={PATTERN_FILES} onChange={(event) => void take(event.target.files)} />
        </Field>
      </div>
      <Troubles troubles={troubles} />
      <button type="submit" className="main" disabled={busy}>
        Add the bag
      </button>
    </form>
  );
}
