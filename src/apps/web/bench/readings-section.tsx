import { useState } from 'react';
import { undo } from '../actions/undo.ts';
import type { ItemFile } from '../../../bench/views/index.ts';
import { reading } from '../format/reading.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Pick } from '../ui/pick.tsx';
import { Section } from '../ui/section.tsx';
import { ORDERS, sorted, type Order } from './reading-order.ts';
import { useUnit } from './unit-context.ts';
import { fitWords, verdict } from './verdict.ts';

type Reading = ItemFile['readings'][number];

/** Every reading of this unit against good boards, in the order of choice: a table, on a phone one card a reading. */
export function ReadingsSection() {
  const { readings, belief } = useUnit().file;
  const [order, setOrder] = useState<Order>('latest');
  if (readings.length === 0) return null;
  return (
    <Section
      id="readings"
      title="Readings"
      aside={readings.length > 1 && <Pick label="Order" options={ORDERS} value={order} onChange={(id) => setOrder(id as Order)} />}
    >
      <table className="cards">
        <thead>
          <tr>
            <th scope="col">Point</th>
            <th scope="col" className="num">
              Reading
            </th>
            <th scope="col">A good one</th>
            <th scope="col">Says</th>
            <th scope="col">By the likeliest fault</th>
            <th scope="col">
              <span className="sr-only">Take it back</span>
            </th>
          </tr>
        </thead>
        <tbody>
          {sorted(readings, order).map((each) => (
            <ReadingRow key={each.event_id} reading={each} doubted={each.event_id === belief.repeat?.event_id} />
          ))}
        </tbody>
      </table>
    </Section>
  );
}

function ReadingRow({ reading: each, doubted }: { readonly reading: Reading; readonly doubted: boolean }) {
  const { record, busy } = useRecorder();
  const value = reading(each.value, each.mode);
  const good = each.reference ?? each.expected;
  return (
    <tr className={doubted ? 'doubted' : undefined}>
      <th scope="row">
        {each.name}
        {doubted && <span className="low"> measure again</span>}
      </th>
      <td className="num" data-label="Reading">
        {value}
      </td>
      <td data-label="A good one">{good ?? 'not measured yet'}</td>
      <td data-label="Says">{verdict(good, each.sigmas, each.value)}</td>
      <td data-label="By the likeliest fault">{fitWords(each.fits)}</td>
      <td>
        <button
          type="button"
          className="quiet"
          disabled={busy}
          aria-label={`Undo: ${each.name}, ${value}`}
          onClick={() => void record(undo([each.event_id]))}
        >
          Undo
        </button>
      </td>
    </tr>
  );
}
