import { useState } from 'react';
import { Pick } from '../ui/pick.tsx';
import { MeasureAnswerForm } from './measure-answer-form.tsx';
import { useUnit } from './unit-context.ts';

/** A reading at any point. */
export function AnyMeasureForm() {
  const { model } = useUnit();
  const [target, setTarget] = useState(model.points[0]!.id);
  const usual = model.checks.find((check) => check.measure === target)?.minutes ?? 1;
  const stage = model.points.find((point) => point.id === target)!.stage;
  return (
    <div className="form">
      <Pick label="Point" options={model.points} value={target} onChange={setTarget} />
      <MeasureAnswerForm key={target} target={target} usualMinutes={usual} stageNeeded={stage} />
    </div>
  );
}
