import { useState } from 'react';
import { receiveItem } from '../actions/receive-item.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { useUnit } from './unit-context.ts';

/** It came: how it looks goes on record before it is touched. */
export function NextReceive() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [condition, setCondition] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(receiveItem(file.row.id, condition));
      }}
    >
      <Field
        label="How it looks, before you touch it"
        hint="Scratches, missing screws, signs of water: your evidence if the seller disputes it"
      >
        <textarea value={condition} onChange={(event) => setCondition(event.target.value)} />
      </Field>
      <button type="submit" className="main" disabled={busy}>
        It is here
      </button>
    </form>
  );
}
