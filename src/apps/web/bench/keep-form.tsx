import { useState } from 'react';
import { keepItem } from '../actions/keep-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { useUnit } from './unit-context.ts';

/** Kept for oneself; it leaves the stock at its cost. */
export function KeepForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [reason, setReason] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(keepItem(file.row.id, reason));
      }}
    >
      <Field label="What for">
        <input value={reason} onChange={(event) => setReason(event.target.value)} />
      </Field>
      <button type="submit" disabled={busy}>
        Keep it
      </button>
    </form>
  );
}
