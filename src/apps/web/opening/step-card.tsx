import { useState } from 'react';
import { tickStep } from '../actions/tick-step.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import type { OpeningStep, OpeningView } from '../../../bench/views/index.ts';
import { useBoardMarks } from '../api/queries.ts';
import { bookedByStep } from '../bench/clock-store.ts';
import { StepPhoto } from '../grow/step-photo.tsx';
import { useRecorder } from '../record/recorder-context.ts';
import { Cautions } from '../ui/cautions.tsx';
import { FastenerCounter, type Counting } from './fastener-counter.tsx';
import { SignButtons } from './sign-buttons.tsx';
import { StepFacts } from './step-facts.tsx';
import { nextStep, stepMinutesNow } from './step-watch.ts';
import { StepWatch } from './step-watch-switch.tsx';
import { useVoice } from './use-voice.ts';
import { VoiceSwitch } from './voice-switch.tsx';

interface StepCardProps {
  readonly opening: OpeningView;
  readonly file: ModelFile;
  readonly step: OpeningStep;
  readonly way: 'in' | 'back';
  readonly number: number;
  readonly of: number;
}

/** The step at hand: what it takes, what to mind and look for, what comes out, and one big button. */
export function StepCard({ opening, file, step, way, number, of }: StepCardProps) {
  const { record, busy } = useRecorder();
  const onMat = opening.fasteners.sets.find(({ set }) => set === step.fasteners?.set)?.on_mat ?? 0;
  const [typed, setTyped] = useState<{ readonly at: string; readonly value: Counting } | null>(null);
  const usual: Counting = { count: way === 'in' ? (step.fasteners?.count ?? 0) : onMat, foreign: 0 };
  const at = `${way} ${step.id}`;
  const counting = typed?.at === at ? typed.value : usual;
  const tick = async (): Promise<void> => {
    if (busy) return;
    const itemId = opening.item_id;
    const minutes = stepMinutesNow(itemId);
    const ticked = { itemId, step: step.id, way, minutes, counted: step.fasteners === null ? null : counting };
    if (!(await record(tickStep(file, ticked)))) return;
    bookedByStep(itemId, minutes);
    nextStep(itemId);
  };
  const voice = useVoice(() => void tick());
  return (
    <section className="sheet next" aria-labelledby="step-name">
      <header>
        <p className="eyebrow">
          {way === 'in' ? 'Step' : 'Put back'} {number} of {of}
        </p>
        <h2 className="headline" id="step-name" aria-live="polite">
          {way === 'back' && <span className="headline-aside">Backwards:</span>}
          {step.name}
        </h2>
      </header>
      <RecordedPlaces modelId={opening.model_id} step={step} />
      {step.picture !== null && (
        <img
          className="step-picture"
          src={`/api/models/${encodeURIComponent(opening.model_id)}/photos/${step.picture}`}
          alt={`How: ${step.name}`}
        />
      )}
      <StepFacts step={step} />
      <Cautions cautions={step.cautions} />
      {step.how !== '' && <p>{step.how}</p>}
      {step.fasteners !== null && (
        <FastenerCounter
          fasteners={step.fasteners}
          way={way}
          onMat={onMat}
          value={counting}
          onChange={(value) => setTyped({ at, value })}
        />
      )}
      {way === 'in' && <SignButtons opening={opening} signs={step.signs} />}
      <button type="button" className="main tick" disabled={busy} onClick={() => void tick()}>
        {way === 'in' ? 'Done' : 'It is back'}
      </button>
      <StepWatch itemId={opening.item_id} />
      <VoiceSwitch voice={voice} />
    </section>
  );
}

/** Where the step was done when it was recorded; nothing where no photo was taken. */
function RecordedPlaces({ modelId, step }: { readonly modelId: string; readonly step: OpeningStep }) {
  const shown = useBoardMarks(modelId).data?.steps.find((each) => each.step === step.id);
  return !shown || shown.photo === null ? null : <StepPhoto hash={shown.photo} places={shown.places} title={step.name} />;
}
