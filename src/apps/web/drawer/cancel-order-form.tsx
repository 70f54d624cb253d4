import { useState } from 'react';
import type { DrawerView } from '../../../bench/views/index.ts';
import { cancelOrder } from '../actions/cancel-order.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';

interface CancelOrderFormProps {
  readonly order: DrawerView['orders'][number];
  readonly currency: string;
}

/** What had not come is not waited for any more. */
export function CancelOrderForm({ order, currency }: CancelOrderFormProps) {
  const { record, busy } = useRecorder();
  const [refundMinor, setRefundMinor] = useState<number | null>(order.on_its_way_minor);
  const [reason, setReason] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(cancelOrder(order.id, refundMinor ?? 0, reason));
      }}
    >
      <div className="fields">
        <MoneyField
          label="Paid back"
          currency={currency}
          valueMinor={refundMinor}
          onChange={setRefundMinor}
          hint="What is not paid back is a loss in the books"
        />
        <Field label="Why">
          <input value={reason} maxLength={200} onChange={(event) => setReason(event.target.value)} />
        </Field>
      </div>
      <button type="submit" disabled={busy}>
        The order is cancelled
      </button>
    </form>
  );
}
