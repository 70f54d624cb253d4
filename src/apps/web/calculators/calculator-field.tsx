import type { Field as Asked } from '../../../bench/calculators/index.ts';
import { Field } from '../ui/field.tsx';

interface CalculatorFieldProps {
  readonly field: Asked;
  readonly text: string;
  /** What is wrong with it, said below all fields. */
  readonly trouble: string | undefined;
  readonly onChange: (text: string) => void;
}

/** One field of a calculator, kept as it is typed. */
export function CalculatorField({ field, text, trouble, onChange }: CalculatorFieldProps) {
  if (field.kind === 'choice')
    return (
      <Field label={field.label}>
        <select value={text} aria-invalid={trouble !== undefined} onChange={(event) => onChange(event.target.value)}>
          {field.options.map(({ value, label }) => (
            <option key={value} value={value}>
              {label}
            </option>
          ))}
        </select>
      </Field>
    );
  return (
    <Field label={field.label}>
      <input
        value={text}
        inputMode={field.kind === 'number' ? 'decimal' : 'text'}
        autoComplete="off"
        aria-invalid={trouble !== undefined}
        onChange={(event) => onChange(event.target.value)}
      />
    </Field>
  );
}
