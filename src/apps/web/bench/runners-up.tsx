import { declineAdvice } from '../actions/decline-advice.ts';
import { money } from '../format/money.ts';
import { chance, duration } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { ReasonForm } from '../ui/reason-form.tsx';
import { useUnit } from './unit-context.ts';

/** The next best, each one tap away; and a way to say that the advice is wrong. */
export function RunnersUp({ choose }: { readonly choose: (id: string) => void }) {
  const { file, bench } = useUnit();
  const { advice } = file;
  if (advice.do === 'nothing') return null;
  return (
    <Fold title="Do something else, or I disagree">
      <div className="form">
        {advice.other_checks.length + advice.other_remedies.length > 0 && (
          <ul className="plain-list runners">
            {advice.other_checks.map((check) => (
              <li key={check.id}>
                <button type="button" onClick={() => choose(check.id)}>
                  {check.name}
                  <small>
                    {duration(check.minutes)}, expected to save {money(check.saving_minor, bench.currency)}
                  </small>
                </button>
              </li>
            ))}
            {advice.other_remedies.map((remedy) => (
              <li key={remedy.id}>
                <button type="button" onClick={() => choose(remedy.id)}>
                  {remedy.name}
                  <small>
                    works after it: {chance(remedy.chance)}, costs {money(remedy.cost_minor, bench.currency)}
                  </small>
                </button>
              </li>
            ))}
          </ul>
        )}
        <Disagree />
        {advice.declined.length > 0 && (
          <p className="small muted">
            You put aside: {advice.declined.map((each) => `${each.id}${each.reason && ` (${each.reason})`}`).join(', ')}. Undo it in the
            log.
          </p>
        )}
      </div>
    </Fold>
  );
}

function Disagree() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const done = (reason: string): void => void record(declineAdvice(file.row.id, file.advice.id, reason));
  return <ReasonForm label="Why not this advice?" action="I disagree, give me the next best" busy={busy} done={done} />;
}
