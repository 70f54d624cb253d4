import { useState } from 'react';
import { recordReading } from '../actions/record-reading.ts';
import type { MeterMode, Stage } from '../../../bench/events/index.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { MeterField } from './meter-field.tsx';
import { MeterOnNetwork } from './meter-on-network.tsx';
import { MinutesField } from './minutes-field.tsx';
import { NumberPad } from './number-pad.tsx';
import { OtherMode } from './other-mode.tsx';
import { pointWords } from './point-words.ts';
import { readMeter } from './read-meter.ts';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

/** What the form needs to know of a point. */
export interface MeasuredPoint {
  readonly id: string;
  readonly name: string;
  readonly mode: MeterMode;
  readonly stage: Stage;
  readonly power: { readonly name: string };
}

interface MeasureAnswerFormProps {
  readonly point: MeasuredPoint;
  readonly usualMinutes: number;
}

/** What the meter shows: typed, or tapped on the big pad. */
export function MeasureAnswerForm({ point, usualMinutes }: MeasureAnswerFormProps) {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [minutes, setMinutes] = useMinutes(usualMinutes);
  const [text, setText] = useState('');
  const typed = text.trim() === '' ? null : readMeter(text, point.mode);
  const note = async (at: MeasuredPoint, value: number | null): Promise<void> => {
    const answer = { itemId: file.row.id, point: at.id, pointName: at.name, mode: at.mode, value, minutes };
    if (await record(recordReading({ ...answer, stage: file.stage, stageNeeded: at.stage }))) setText('');
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (typed?.ok) void note(point, typed.value);
      }}
    >
      <MeterField label={pointWords(point)} mode={point.mode} text={text} onChange={setText} typed={typed} />
      {typed?.ok === false && typed.said !== undefined && (
        <OtherMode point={point} said={typed.said} busy={busy} clear={() => setText('')} note={(at) => void note(at, typed.value)} />
      )}
      <MeterOnNetwork mode={point.mode} onReading={setText} />
      <NumberPad mode={point.mode} text={text} onChange={setText} />
      <button type="submit" className="main" disabled={busy || typed === null || !typed.ok}>
        Note the reading
      </button>
      <MinutesField value={minutes} onChange={setMinutes} />
    </form>
  );
}
