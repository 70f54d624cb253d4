import type { ModelFile } from '../../../bench/models/index.ts';
import type { BoardMarks } from '../../../bench/views/board-marks.ts';
import { setFacts } from '../actions/set-fact.ts';
import { duration } from '../format/number.ts';
import { STAGE_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { StepPhoto } from './step-photo.tsx';

interface RecordedStepsProps {
  readonly file: ModelFile;
  readonly own: ReadonlySet<string>;
  readonly photos: BoardMarks['steps'];
}

/** What was recorded so far, in order; only the last one can be taken out, for each leans on the one before. */
export function RecordedSteps({ file, own, photos }: RecordedStepsProps) {
  const { record, busy } = useRecorder();
  const steps = file.steps.filter(({ id }) => own.has(id));
  return (
    <Section id="recorded" title="Recorded so far">
      {steps.length === 0 && <p className="muted">No step yet.</p>}
      <ol className="steps">
        {steps.map((step, i) => {
          const shown = photos.find((each) => each.step === step.id);
          return (
            <li key={step.id}>
              {step.name}{' '}
              <span className="small muted">
                {duration(step.minutes)}
                {step.reaches !== undefined && `, then it is ${STAGE_WORDS[step.reaches].toLowerCase()}`}
              </span>
              <Cautions cautions={step.cautions} />
              {shown && shown.photo !== null && (
                <Fold title="Where">
                  <StepPhoto hash={shown.photo} places={shown.places} title={step.name} />
                </Fold>
              )}
              {i === steps.length - 1 && (
                <button
                  type="button"
                  disabled={busy}
                  onClick={() => void record(setFacts(file.id, `${step.name} taken out`, [{ section: 'steps', id: step.id, value: null }]))}
                >
                  Take the last step out
                </button>
              )}
            </li>
          );
        })}
      </ol>
    </Section>
  );
}
