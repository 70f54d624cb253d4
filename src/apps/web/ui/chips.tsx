import { useId } from 'react';

interface ChipsProps<T extends string> {
  readonly legend: string;
  readonly options: readonly { readonly value: T; readonly label: string }[];
  readonly value: T;
  readonly onChange: (value: T) => void;
  /** The choice that says nothing: it looks so too. */
  readonly quiet?: T;
}

/** One of a few, side by side. */
export function Chips<T extends string>({ legend, options, value, onChange, quiet }: ChipsProps<T>) {
  const name = useId();
  return (
    <fieldset className="chips">
      <legend>{legend}</legend>
      <div className="chip-row">
        {options.map((option) => (
          <label key={option.value} className={option.value === quiet ? 'chip chip-quiet' : 'chip'}>
            <input type="radio" name={name} checked={option.value === value} onChange={() => onChange(option.value)} />
            <span>{option.label}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}
