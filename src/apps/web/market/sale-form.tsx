import { useState } from 'react';
import { seeSales } from '../actions/see-sale.ts';
import { newId } from '../record/new-id.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { CONDITION_WORDS, CONDITIONS, type Condition } from './condition-words.ts';

const today = (): string => new Date().toISOString().slice(0, 10);
const OPTIONS = CONDITIONS.map((id) => ({ id, name: CONDITION_WORDS[id] }));
const YES_NO = [
  { id: '', name: 'Not known' },
  { id: '1', name: 'Yes' },
  { id: '0.5', name: 'In part' },
  { id: '0', name: 'No' },
];

/** One sale that somebody else made. */
export function SaleForm({ modelId, currency }: { readonly modelId: string; readonly currency: string }) {
  const { record, busy } = useRecorder();
  const [priceMinor, setPriceMinor] = useState<number | null>(null);
  const [day, setDay] = useState(today);
  const [condition, setCondition] = useState<Condition>('B');
  const [complete, setComplete] = useState('');
  const [original, setOriginal] = useState('');
  const [text, setText] = useState('');
  const share = (typed: string): number | undefined => (typed === '' ? undefined : Number(typed));
  const add = async (price: number): Promise<void> => {
    const sale = {
      saleId: newId('sale'),
      modelId,
      day,
      priceMinor: price,
      currency,
      rate: 1,
      condition,
      complete: share(complete),
      original: share(original),
      text,
    };
    if (!(await record(seeSales([sale])))) return;
    setPriceMinor(null);
    setText('');
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
        <MoneyField label="Sold for, postage left out" currency={currency} valueMinor={priceMinor} onChange={setPriceMinor} required />
        <Field label="Day">
          <input type="date" value={day} required onChange={(event) => setDay(event.target.value)} />
        </Field>
        <Pick label="Condition" options={OPTIONS} value={condition} onChange={(id) => setCondition(id as Condition)} />
        <Pick label="With all that belongs to it" options={YES_NO} value={complete} onChange={setComplete} />
        <Pick label="Its own screen and shell" options={YES_NO} value={original} onChange={setOriginal} />
        <Field label="Where you saw it">
          <input value={text} maxLength={400} onChange={(event) => setText(event.target.value)} />
        </Field>
      </div>
      <button type="submit" className="main" disabled={busy}>
        Add the sale
      </button>
    </form>
  );
}
