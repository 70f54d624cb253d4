import { useState } from 'react';
import { setLearning } from '../actions/set-learning.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { NumberField } from '../ui/number-field.tsx';

/** How fast old jobs lose their weight. */
export function FadeForm({ halfLifeDays }: { readonly halfLifeDays: number | null }) {
  const { record, busy } = useRecorder();
  const [days, setDays] = useState(halfLifeDays ?? 730);
  return (
    <Fold title={halfLifeDays === null ? 'Old jobs do not fade' : `A job counts half after ${halfLifeDays} days`}>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          void record(setLearning(days));
        }}
      >
        <NumberField label="A job counts half after so many days" value={days} min={1} max={100_000} onChange={setDays} />
        <div className="row">
          <button type="submit" disabled={busy}>
            Let jobs fade so
          </button>
          <button type="button" disabled={busy} onClick={() => void record(setLearning(null))}>
            Never let them fade
          </button>
        </div>
      </form>
    </Fold>
  );
}
