import type { DrawerView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { day } from '../format/when.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { ArrivedForm } from './arrived-form.tsx';
import { CancelOrderForm } from './cancel-order-form.tsx';
import { PlaceOrderForm } from './place-order-form.tsx';

type Order = DrawerView['orders'][number];

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
                  {standing(order)} · {money(order.cost_minor, drawer.currency)}
                </span>{' '}
                {order.state === 'late' && <span className="low">late</span>}
              </>
            }
          >
            <ul>
              {order.lines.map((line, index) => (
                <li key={`${index}-${line.part}`}>
                  {line.count} × {line.name}
                  {line.came > 0 && line.came < line.count && `, ${line.came} of them came`}
                </li>
              ))}
            </ul>
            {(order.state === 'ordered' || order.state === 'late' || order.state === 'partly-come') && (
              <>
                <p className="small muted">
                  {order.due_day === null ? 'No day was noted by which it should come. ' : `It should come by ${day(order.due_day)}. `}
                  {money(order.on_its_way_minor, drawer.currency)} are paid for what may still come.
                </p>
                <ArrivedForm order={order} />
                <Fold title="It will not come">
                  <CancelOrderForm order={order} currency={drawer.currency} />
                </Fold>
              </>
            )}
          </Fold>
        ))}
        <Fold title="Note an order">
          <PlaceOrderForm currency={drawer.currency} />
        </Fold>
      </div>
    </Section>
  );
}

/** How it stands, in words. */
function standing({ state, placed_at: placed, arrived_at: arrived, cancelled_at: cancelled, lines }: Order): string {
  if (state === 'come') return `arrived ${day(arrived!)}`;
  const part = lines.some(({ came }) => came > 0) ? 'partly come, ' : '';
  return state === 'cancelled' ? `${part}cancelled ${day(cancelled!)}` : `${part}ordered ${day(placed)}`;
}
