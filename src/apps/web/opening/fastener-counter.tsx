import type { OpeningStep } from '../../../bench/views/index.ts';
import { CountField } from './count-field.tsx';

export interface Counting {
  readonly count: number;
  readonly foreign: number;
}

interface FastenerCounterProps {
  readonly fasteners: NonNullable<OpeningStep['fasteners']>;
  readonly way: 'in' | 'back';
  /** How many lie on the mat. */
  readonly onMat: number;
  readonly value: Counting;
  readonly onChange: (value: Counting) => void;
}

/** More than belong there can come out, when somebody put in others. */
const BEYOND = 4;

/** What of a set of fasteners comes out at this step, or goes in again. */
export function FastenerCounter({ fasteners, way, onMat, value, onChange }: FastenerCounterProps) {
  const { name, drive, length_mm: length, count: belongs } = fasteners;
  const missing = Math.max(0, belongs - value.count);
  return (
    <fieldset className="counter">
      <legend>
        {name}: {belongs} × {drive}, {length} mm
      </legend>
      <CountField
        label={way === 'in' ? 'Came out' : 'Went in'}
        value={value.count}
        max={belongs + BEYOND}
        onChange={(count) => onChange({ count, foreign: Math.min(value.foreign, count) })}
      />
      {way === 'in' && (
        <CountField
          label="Of another kind"
          value={value.foreign}
          max={value.count}
          onChange={(foreign) => onChange({ ...value, foreign })}
        />
      )}
      {way === 'in' && missing + value.foreign > 0 && (
        <p className="small">
          {[missing > 0 ? `${missing} missing` : '', value.foreign > 0 ? `${value.foreign} of another kind` : '']
            .filter(Boolean)
            .join(', ')}
          : noted as a sign of earlier opening, and on the shopping list.
        </p>
      )}
      {way === 'back' && (
        <p className="small">
          {onMat} on the mat{onMat > value.count ? `: ${onMat - value.count} would be left over.` : '.'}
        </p>
      )}
    </fieldset>
  );
}
