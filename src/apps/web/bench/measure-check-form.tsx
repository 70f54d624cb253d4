import type { MeterMode } from '../../../bench/events/index.ts';
import type { CheckView } from '../../../bench/views/index.ts';
import { MODE_WORDS } from '../format/words.ts';
import { MeasureAnswerForm, type MeasuredPoint } from './measure-answer-form.tsx';
import { POWER_WORDS } from './power-words.ts';
import { useUnit } from './unit-context.ts';

/** Takes the reading of a check: at a point of the model, or at a net of its circuit. */
export function MeasureCheckForm({ check }: { readonly check: CheckView }) {
  const { model } = useUnit();
  const point = model.points.find(({ id }) => id === check.target);
  const power = check.probe?.power ?? (point && { name: POWER_WORDS[point.power] });
  const mode = check.mode ?? point?.mode;
  if (!power || !isMode(mode)) return <p>The model does not say where {check.target} is. Do something else, and mend the model.</p>;
  const measured: MeasuredPoint = {
    id: check.target,
    name: point?.name ?? check.name.replace(/^Measure /, ''),
    mode,
    stage: check.stage,
    power,
  };
  return <MeasureAnswerForm point={measured} usualMinutes={check.minutes} />;
}

const isMode = (mode: string | undefined): mode is MeterMode => mode !== undefined && mode in MODE_WORDS;
