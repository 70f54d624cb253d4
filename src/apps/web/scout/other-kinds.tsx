import type { ModelRow } from '../../../bench/views/index.ts';
import { defaultModel, modelOptions } from '../ui/model-options.ts';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import type { OtherKind } from './listing-form.ts';

interface OtherKindsProps {
  readonly others: readonly OtherKind[];
  readonly models: readonly ModelRow[];
  readonly change: (others: readonly OtherKind[]) => void;
}

/** Units of other models that are sold together with the first kind. */
export function OtherKinds({ others, models, change }: OtherKindsProps) {
  const put = (at: number, part: Partial<OtherKind>): void => change(others.map((other, i) => (i === at ? { ...other, ...part } : other)));
  return (
    <>
      {others.map((other, at) => (
        <fieldset key={at} className="unit-line" aria-label={`Also in the lot, ${at + 1}`}>
          <div className="fields">
            <Pick
              label="Also in the lot"
              options={modelOptions(models)}
              value={other.modelId}
              onChange={(modelId) => put(at, { modelId })}
            />
            <NumberField
              label="How many of these"
              value={other.count}
              min={1}
              max={40}
              onChange={(count) => put(at, { count: Math.round(count) })}
            />
          </div>
          <button type="button" onClick={() => change(others.filter((_, i) => i !== at))}>
            Not in the lot
          </button>
        </fieldset>
      ))}
      <button type="button" onClick={() => change([...others, { modelId: defaultModel(models), count: 1 }])}>
        Another kind in the same lot
      </button>
    </>
  );
}
