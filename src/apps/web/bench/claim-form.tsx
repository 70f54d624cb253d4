import { useState } from 'react';
import { recordClaim } from '../actions/record-claim.ts';
import type { Outcome } from '../../../bench/events/index.ts';
import { OUTCOME_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Pick } from '../ui/pick.tsx';
import { useUnit } from './unit-context.ts';

const OUTCOMES = Object.keys(OUTCOME_WORDS) as readonly Outcome[];

/** One more thing that the seller says, or that it was never tried. */
export function ClaimForm() {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const [target, setTarget] = useState(model.functions[0]!.id);
  return (
    <div className="form">
      <Pick label="Of which function" options={model.functions} value={target} onChange={setTarget} />
      <fieldset className="big-answers">
        <legend>The seller says</legend>
        {OUTCOMES.map((says) => (
          <button
            key={says}
            type="button"
            disabled={busy}
            onClick={() => void record(recordClaim(file.row.id, { about: 'function', function: target, says }))}
          >
            {OUTCOME_WORDS[says]}
          </button>
        ))}
        <button type="button" disabled={busy} onClick={() => void record(recordClaim(file.row.id, { about: 'untested' }))}>
          Never tried
        </button>
      </fieldset>
    </div>
  );
}
