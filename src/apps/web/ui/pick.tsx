import { Field } from './field.tsx';

interface PickProps {
  readonly label: string;
  readonly options: readonly { readonly id: string; readonly name: string }[];
  readonly value: string;
  readonly onChange: (id: string) => void;
}

/** One of the things that the model declares. */
export function Pick({ label, options, value, onChange }: PickProps) {
  return (
    <Field label={label}>
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        {options.map((option) => (
          <option key={option.id} value={option.id}>
            {option.name}
          </option>
        ))}
      </select>
    </Field>
  );
}
