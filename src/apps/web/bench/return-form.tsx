import { useState } from 'react';
import { returnItem } from '../actions/return-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { useUnit } from './unit-context.ts';

/** The buyer sent it back. */
export function ReturnForm() {
  const { file, bench } = useUnit();
  const { record, busy } = useRecorder();
  const [refundMinor, setRefundMinor] = useState<number | null>(null);
  const [feesBackMinor, setFeesBackMinor] = useState<number | null>(0);
  const [postageMinor, setPostageMinor] = useState<number | null>(0);
  const [reason, setReason] = useState('');
  const { currency } = bench;
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (refundMinor === null) return;
        const answer = { itemId: file.row.id, refundMinor, feesBackMinor: feesBackMinor ?? 0, postageMinor: postageMinor ?? 0, reason };
        void record(returnItem(answer));
      }}
    >
      <div className="fields">
        <MoneyField label="Refund" currency={currency} valueMinor={refundMinor} onChange={setRefundMinor} required />
        <MoneyField label="Fees given back" currency={currency} valueMinor={feesBackMinor} onChange={setFeesBackMinor} />
        <MoneyField label="Postage of the return" currency={currency} valueMinor={postageMinor} onChange={setPostageMinor} />
        <Field label="What the buyer says">
          <input value={reason} onChange={(event) => setReason(event.target.value)} />
        </Field>
      </div>
      <button type="submit" className="main" disabled={busy}>
        It came back
      </button>
    </form>
  );
}
