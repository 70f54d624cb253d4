import { useId, useState } from 'react';
import { recordReading } from '../actions/record-reading.ts';
import { reading } from '../format/reading.ts';
import { MODE_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import type { AnswerFormProps } from './answer-form.ts';
import { MinutesField } from './minutes-field.tsx';
import { NumberPad } from './number-pad.tsx';
import { readMeter } from './read-meter.ts';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

const POWER_WORDS = { off: 'power off, battery out', battery: 'on battery', charger: 'on the charger' } as const;

/** What the meter shows: typed, or tapped on the big pad. */
export function MeasureAnswerForm({ target, usualMinutes, stageNeeded }: AnswerFormProps) {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const [minutes, setMinutes] = useMinutes(usualMinutes);
  const [text, setText] = useState('');
  const messageId = useId();
  const point = model.points.find((each) => each.id === target);
  if (point === undefined) return <p>The model does not say where {target} is. Do something else, and mend the model.</p>;
  const typed = text.trim() === '' ? null : readMeter(text, point.mode);
  const send = async (): Promise<void> => {
    if (typed === null || !typed.ok) return;
    const answer = { itemId: file.row.id, point: point.id, pointName: point.name, mode: point.mode, value: typed.value, minutes };
    if (await record(recordReading({ ...answer, stage: file.stage, stageNeeded }))) setText('');
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <label className="field">
        <span className="field-label">
          {point.name}, {MODE_WORDS[point.mode].toLowerCase()}, {POWER_WORDS[point.power]}
        </span>
        <input
          className="meter"
          type="text"
          inputMode="none"
          autoComplete="off"
          value={text}
          aria-invalid={typed?.ok === false}
          aria-describedby={messageId}
          onChange={(event) => setText(event.target.value)}
        />
      </label>
      <p id={messageId} className="small meter-echo" aria-live="polite">
        {typed === null
          ? 'As the meter shows it, such as 3.28, 4k7 or OL'
          : typed.ok
            ? `= ${reading(typed.value, point.mode)}`
            : typed.message}
      </p>
      <NumberPad mode={point.mode} text={text} onChange={setText} />
      <button type="submit" className="main" disabled={busy || typed === null || !typed.ok}>
        Note the reading
      </button>
      <MinutesField value={minutes} onChange={setMinutes} />
    </form>
  );
}
