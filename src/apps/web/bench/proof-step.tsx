import { useState } from 'react';
import { proveStep, type ProofAnswer } from '../actions/prove-step.ts';
import { TEST_NAMES } from '../../../bench/report/test-names.ts';
import type { ProofView } from '../../../bench/views/index.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Field } from '../ui/field.tsx';
import { Why } from '../ui/why.tsx';
import { useUnit } from './unit-context.ts';

/** One test that must pass before the unit leaves: pass, fail, or sign off with a reason. */
export function ProofStep({ step }: { readonly step: ProofView['steps'][number] }) {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [reason, setReason] = useState('');
  const answer = (outcome: ProofAnswer['outcome']): void =>
    void record(proveStep({ itemId: file.row.id, step: step.id, stepName: step.name, outcome, reason, minutes: 0 }));
  const hasReason = reason.trim() !== '';
  return (
    <div className="form">
      <h3>{step.name}</h3>
      {step.how !== '' && <p>{step.how}</p>}
      {step.limits.length > 0 && (
        <ul className="small lines" aria-label="What counts as passed">
          {step.limits.map((limit) => (
            <li key={limit}>{limit}</li>
          ))}
        </ul>
      )}
      {step.measured_by.length > 0 && step.measured.length === 0 && (
        <p className="small">
          It can be measured: <a href="#tests">{step.measured_by.map((test) => TEST_NAMES[test]).join(', ')}</a>
        </p>
      )}
      {step.measured.length > 0 && (
        <ul className="small lines" aria-label="Measured">
          {step.measured.map((line) => (
            <li key={line}>Measured: {line}</li>
          ))}
        </ul>
      )}
      <Why lines={step.because} summary="Why is this asked?" />
      <Cautions cautions={step.cautions} />
      <div className="big-answers">
        <button type="button" className="main" disabled={busy} onClick={() => answer('pass')}>
          Pass
        </button>
        <button type="button" disabled={busy} onClick={() => answer('fail')}>
          Fail
        </button>
      </div>
      <Field label="Reason" hint="Needed to sign off: the unit leaves without this step, and the buyer is told">
        <input value={reason} onChange={(event) => setReason(event.target.value)} />
      </Field>
      <button type="button" disabled={busy || !hasReason} onClick={() => answer('signed-off')}>
        Sign off with this reason
      </button>
    </div>
  );
}
