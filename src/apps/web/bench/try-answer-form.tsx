import { recordTrial } from '../actions/record-trial.ts';
import { OUTCOME_WORDS } from '../format/words.ts';
import type { Outcome } from '../../../bench/events/index.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { nameIn, type AnswerFormProps } from './answer-form.ts';
import { MinutesField } from './minutes-field.tsx';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

const OUTCOMES: readonly Outcome[] = ['works', 'fails', 'comes-and-goes'];

/** Works, fails, comes and goes: one tap records the trial, with the accessories of the check. */
export function TryAnswerForm({
  target,
  usualMinutes,
  stageNeeded,
  accessories,
}: AnswerFormProps & { readonly accessories: readonly string[] }) {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const [minutes, setMinutes] = useMinutes(usualMinutes);
  const spec = model.functions.find((each) => each.id === target);
  const answer = (outcome: Outcome): void =>
    void record(
      recordTrial({
        itemId: file.row.id,
        function: target,
        functionName: spec?.name ?? target,
        outcome,
        with: accessories,
        minutes,
        stage: file.stage,
        stageNeeded,
      }),
    );
  return (
    <div className="form">
      {accessories.length > 0 && (
        <p>
          <b>Use</b> {accessories.map((id) => nameIn(model.accessories, id)).join(' and ')}.
        </p>
      )}
      <fieldset className="big-answers">
        <legend>{spec?.question ?? `${spec?.name ?? target}: what does it do?`}</legend>
        {OUTCOMES.map((outcome) => (
          <button key={outcome} type="button" disabled={busy} onClick={() => answer(outcome)}>
            {OUTCOME_WORDS[outcome]}
          </button>
        ))}
      </fieldset>
      <MinutesField value={minutes} onChange={setMinutes} />
    </div>
  );
}
