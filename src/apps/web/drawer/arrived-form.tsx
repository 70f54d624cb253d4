import { useState } from 'react';
import type { DrawerView } from '../../../bench/views/index.ts';
import { orderArrived } from '../actions/order-arrived.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';

/** A parcel of an order: everything that had not come, or fewer of some lines. */
export function ArrivedForm({ order }: { readonly order: DrawerView['orders'][number] }) {
  const { record, busy } = useRecorder();
  const [place, setPlace] = useState('');
  const open = order.lines.map(({ count, came }) => count - came);
  const [counts, setCounts] = useState<readonly number[] | null>(null);
  const isAll = counts === null || counts.every((count, i) => count === open[i]);
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(orderArrived(order.id, place, isAll ? undefined : counts)).then((isNoted) => isNoted && setCounts(null));
      }}
    >
      <div className="fields">
        <Field label="Where the parts lie now">
          <input value={place} onChange={(event) => setPlace(event.target.value)} />
        </Field>
        {counts?.map((count, i) => (
          <NumberField
            key={`${i}-${order.lines[i]!.part}`}
            label={`${order.lines[i]!.name} that came`}
            hint={`of ${open[i]}`}
            value={count}
            max={open[i]!}
            onChange={(typed) => setCounts(counts.map((each, j) => (j === i ? Math.round(typed) : each)))}
          />
        ))}
      </div>
      <div className="row">
        <button type="submit" disabled={busy}>
          It arrived
        </button>
        {counts === null && (
          <button type="button" onClick={() => setCounts(open)}>
            Only a part of it came
          </button>
        )}
      </div>
    </form>
  );
}
