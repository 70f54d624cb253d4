import { useState } from 'react';
import { sellItem, usualFeeMinor } from '../actions/sell-item.ts';
import { useAsking } from '../api/queries.ts';
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

/** The sale: price, what selling took, to whom. Fee and postage start at what the person's own tables say, else at what is usual for the bench; emptied, they are nothing. */
export function SaleForm({ as: usualAs }: { readonly as: SoldAs }) {
  const { file, bench } = useUnit();
  const { record, busy } = useRecorder();
  const [as, setAs] = useState<SoldAs>(usualAs);
  const [priceMinor, setPriceMinor] = useState<number | null>(null);
  const [chargedMinor, setChargedMinor] = useState<number | null>(0);
  const [feesMinor, setFeesMinor] = useState<number | null | undefined>();
  const [ownPostageMinor, setPostageMinor] = useState<number | null | undefined>();
  const [buyer, setBuyer] = useState('');
  const [today] = useState(() => new Date().toISOString());
  const asking = useAsking(file.row.id, null, file.row.kind === 'unit').data;
  const place = asking?.place ?? '';
  const fees = feesMinor === undefined ? usualFeeMinor(priceMinor ?? 0, bench, place, today) : feesMinor;
  const usualPostageMinor = asking?.postage_minor ?? bench.postage_out_minor;
  const postageMinor = ownPostageMinor === undefined ? usualPostageMinor : ownPostageMinor;
  const { currency } = bench;
  const sell = (price: number): void =>
    void record(
      sellItem({
        itemId: file.row.id,
        as,
        priceMinor: price,
        postageChargedMinor: chargedMinor ?? 0,
        feesMinor: fees ?? 0,
        postageMinor: postageMinor ?? 0,
        currency,
        rate: 1,
        buyer,
      }),
    );
  const feeHint = bench.fees.some((table) => table.place === place) ? `By your table of ${place}` : `Usually ${bench.fee_percent} %`;
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
        <MoneyField label="Fees" currency={currency} valueMinor={fees} onChange={setFeesMinor} hint={feeHint} />
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
