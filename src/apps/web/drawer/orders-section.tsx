import { useState } from 'react';
import type { DrawerView } from '../../../bench/views/index.ts';
import { orderArrived } from '../actions/order-arrived.ts';
import { money } from '../format/money.ts';
import { day } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { PlaceOrderForm } from './place-order-form.tsx';

/** What is ordered, and what has come. */
export function OrdersSection({ drawer }: { readonly drawer: DrawerView }) {
  return (
    <Section id="orders" title="Orders">
      {drawer.orders.length === 0 && <p className="muted">Nothing is ordered.</p>}
      <div>
        {drawer.orders.map((order) => (
          <Fold
            key={order.id}
            title={
              <>
                {order.supplier}{' '}
                <span className="small muted">
                  {order.arrived_at === null ? `ordered ${day(order.placed_at)}` : `arrived ${day(order.arrived_at)}`} ·{' '}
                  {money(order.cost_minor, drawer.currency)}
                </span>
              </>
            }
          >
            <ul>
              {order.lines.map((line, index) => (
                <li key={`${index}-${line.part}`}>
                  {line.count} × {line.name}
                </li>
              ))}
            </ul>
            {order.arrived_at === null && <ArrivedForm id={order.id} />}
          </Fold>
        ))}
        <Fold title="Note an order">
          <PlaceOrderForm currency={drawer.currency} />
        </Fold>
      </div>
    </Section>
  );
}

function ArrivedForm({ id }: { readonly id: string }) {
  const { record, busy } = useRecorder();
  const [place, setPlace] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(orderArrived(id, place));
      }}
    >
      <Field label="Where the parts lie now">
        <input value={place} onChange={(event) => setPlace(event.target.value)} />
      </Field>
      <button type="submit" disabled={busy}>
        It arrived
      </button>
    </form>
  );
}
