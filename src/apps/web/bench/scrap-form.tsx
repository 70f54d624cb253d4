import { useState } from 'react';
import { scrapItem } from '../actions/scrap-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { useUnit } from './unit-context.ts';

/** Thrown away; its cost is written off. */
export function ScrapForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [reason, setReason] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(scrapItem(file.row.id, reason));
      }}
    >
      <Field label="Why" hint="Cells, screens and boards do not belong in the bin: follow your local rules">
        <input value={reason} required maxLength={200} onChange={(event) => setReason(event.target.value)} />
      </Field>
      <button type="submit" disabled={busy}>
        Scrap it
      </button>
    </form>
  );
}
