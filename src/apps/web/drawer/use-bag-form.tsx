import { useState } from 'react';
import type { DrawerView } from '../../../bench/views/index.ts';
import { takeFromBag } from '../actions/take-from-bag.ts';
import { usePile } from '../api/queries.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';

/** So many of this bag go into a unit of the pile. */
export function UseBagForm({ bag }: { readonly bag: DrawerView['bags'][number] }) {
  const pile = usePile();
  const { record, busy } = useRecorder();
  const units = (pile.data?.plan ?? []).map(({ row }) => ({ id: row.id, name: `#${row.number} ${row.name}` }));
  const [picked, setPicked] = useState('');
  const [count, setCount] = useState(1);
  const unit = picked || (units[0]?.id ?? '');
  if (bag.count === 0) return <p>It is empty.</p>;
  if (units.length === 0) return <p>No unit is on the bench to use it for.</p>;
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(takeFromBag(bag.id, bag.name, unit, count));
      }}
    >
      <div className="fields">
        <Pick label="For unit" options={units} value={unit} onChange={setPicked} />
        <NumberField label="How many" value={count} min={1} max={bag.count} onChange={(typed) => setCount(Math.round(typed))} />
      </div>
      <button type="submit" disabled={busy}>
        Use
      </button>
    </form>
  );
}
