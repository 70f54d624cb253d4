import { useState } from 'react';
import { Pick } from '../ui/pick.tsx';
import { LookAnswerForm } from './look-answer-form.tsx';
import { useUnit } from './unit-context.ts';

/** A finding at any place. */
export function AnyLookForm() {
  const { model, file } = useUnit();
  const [target, setTarget] = useState(model.blocks[0]!.id);
  const check = model.checks.find((each) => each.look === target);
  const likely = model.faults.filter((fault) => fault.block === target).flatMap((fault) => Object.keys(fault.seen));
  return (
    <div className="form">
      <Pick label="Place" options={model.blocks} value={target} onChange={setTarget} />
      <LookAnswerForm
        key={target}
        target={target}
        usualMinutes={check?.minutes ?? 1}
        stageNeeded={check?.stage ?? file.stage}
        likely={likely}
      />
    </div>
  );
}
