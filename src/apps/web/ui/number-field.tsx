import { Field } from './field.tsx';

interface NumberFieldProps {
  readonly label: string;
  readonly value: number;
  readonly onChange: (value: number) => void;
  readonly min?: number;
  readonly max?: number;
  readonly step?: number | 'any';
  readonly hint?: string;
}

/** A plain number; what is not one leaves the value as it was. */
export function NumberField({ label, value, onChange, min = 0, max, step = 1, hint }: NumberFieldProps) {
  return (
    <Field label={label} hint={hint}>
      <input
        type="number"
        inputMode="decimal"
        value={value}
        min={min}
        max={max}
        step={step}
        onChange={(event) => {
          const typed = event.target.valueAsNumber;
          if (Number.isFinite(typed)) onChange(typed);
        }}
      />
    </Field>
  );
}
