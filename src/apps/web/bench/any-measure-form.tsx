import { useState } from 'react';
import { usePoints } from '../api/queries.ts';
import { Pick } from '../ui/pick.tsx';
import { MeasureAnswerForm, type MeasuredPoint } from './measure-answer-form.tsx';
import { pointTitle } from './point-words.ts';
import { POWER_WORDS } from './power-words.ts';
import { useUnit } from './unit-context.ts';

/** A reading at any point: those of the model, and at level 2 those of its circuit, too. */
export function AnyMeasureForm() {
  const { model } = useUnit();
  const known = usePoints(model.id).data;
  const ofFile = model.points.map((point): MeasuredPoint => ({ ...point, power: { name: POWER_WORDS[point.power] } }));
  const points: readonly MeasuredPoint[] = known ?? ofFile;
  const [target, setTarget] = useState(points[0]!.id);
  const point = points.find(({ id }) => id === target) ?? points[0]!;
  const usual = model.checks.find((check) => check.measure === target)?.minutes ?? 1;
  return (
    <div className="form">
      <Pick label="Point" options={points.map((each) => ({ id: each.id, name: pointTitle(each) }))} value={target} onChange={setTarget} />
      <MeasureAnswerForm key={target} point={point} usualMinutes={usual} />
    </div>
  );
}
