interface CountFieldProps {
  readonly label: string;
  readonly value: number;
  readonly max: number;
  readonly onChange: (value: number) => void;
}

/** A small count with two big keys, for dirty hands. */
export function CountField({ label, value, max, onChange }: CountFieldProps) {
  const to = (next: number) => () => onChange(Math.min(max, Math.max(0, next)));
  return (
    <fieldset className="count-field" aria-label={label}>
      <span>{label}</span>
      <button type="button" aria-label={`${label}: one less`} disabled={value === 0} onClick={to(value - 1)}>
        −
      </button>
      <output aria-label={label}>{value}</output>
      <button type="button" aria-label={`${label}: one more`} disabled={value >= max} onClick={to(value + 1)}>
        +
      </button>
    </fieldset>
  );
}
