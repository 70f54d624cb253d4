import { useState } from 'react';
import { sellItem, usualFeeMinor } from '../actions/sell-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { useUnit } from './unit-context.ts';

type SoldAs = 'working' | 'for-parts';
const AS = [
  { value: 'working', label: 'As working' },
  { value: 'for-parts', label: 'For parts' },
] as const;

/** The sale: price, what selling took, to whom. Fee and postage start at what is usual for the bench. */
export function SaleForm({ as: usualAs }: { readonly as: SoldAs }) {
  const { file, bench } = useUnit();
  const { record, busy } = useRecorder();
  const [as, setAs] = useState<SoldAs>(usualAs);
  const [priceMinor, setPriceMinor] = useState<number | null>(null);
  const [chargedMinor, setChargedMinor] = useState<number | null>(0);
  const [feesMinor, setFeesMinor] = useState<number | null>(null);
  const [postageMinor, setPostageMinor] = useState<number | null>(bench.postage_out_minor);
  const [buyer, setBuyer] = useState('');
  const fees = feesMinor ?? usualFeeMinor(priceMinor ?? 0, bench.fee_percent);
  const { currency } = bench;
  const sell = (price: number): void =>
    void record(
      sellItem({
        itemId: file.row.id,
        as,
        priceMinor: price,
        postageChargedMinor: chargedMinor ?? 0,
        feesMinor: fees,
        postageMinor: postageMinor ?? 0,
        currency,
        rate: 1,
        buyer,
      }),
    );
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (priceMinor !== null) sell(priceMinor);
      }}
    >
      <Chips legend="Sold" options={AS} value={as} onChange={setAs} />
      <div className="fields">
        <MoneyField label="Price" currency={currency} valueMinor={priceMinor} onChange={setPriceMinor} required />
        <MoneyField label="Postage charged" currency={currency} valueMinor={chargedMinor} onChange={setChargedMinor} />
        <MoneyField label="Fees" currency={currency} valueMinor={fees} onChange={setFeesMinor} hint={`Usually ${bench.fee_percent} %`} />
        <MoneyField label="Postage paid" currency={currency} valueMinor={postageMinor} onChange={setPostageMinor} />
        <Field label="Buyer">
          <input value={buyer} onChange={(event) => setBuyer(event.target.value)} />
        </Field>
      </div>
      <button type="submit" className="main" disabled={busy}>
        It is sold
      </button>
    </form>
  );
}
