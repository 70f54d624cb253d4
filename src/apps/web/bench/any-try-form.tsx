import { useState } from 'react';
import { Pick } from '../ui/pick.tsx';
import { TryAnswerForm } from './try-answer-form.tsx';
import { useUnit } from './unit-context.ts';

/** A trial of any function, with any of the known-good accessories. */
export function AnyTryForm() {
  const { model, file } = useUnit();
  const [target, setTarget] = useState(model.functions[0]!.id);
  const [accessories, setAccessories] = useState<readonly string[]>([]);
  const usual = model.checks.find((check) => check.try === target)?.minutes ?? 1;
  return (
    <div className="form">
      <Pick label="Function" options={model.functions} value={target} onChange={setTarget} />
      {model.accessories.length > 0 && (
        <fieldset className="chips">
          <legend>With these, known to be good</legend>
          <div className="fields">
            {model.accessories.map((each) => (
              <label key={each.id} className="check-line">
                <input
                  type="checkbox"
                  checked={accessories.includes(each.id)}
                  onChange={(event) =>
                    setAccessories(event.target.checked ? [...accessories, each.id] : accessories.filter((id) => id !== each.id))
                  }
                />
                {each.name}
              </label>
            ))}
          </div>
        </fieldset>
      )}
      <TryAnswerForm key={target} target={target} usualMinutes={usual} stageNeeded={file.stage} accessories={accessories} />
    </div>
  );
}
