import { useState } from 'react';
import { formatMinor, parseMajor } from '../../../core/quantity/index.ts';
import { Field } from './field.tsx';

interface MoneyFieldProps {
  readonly label: string;
  readonly currency: string;
  readonly valueMinor: number | null;
  readonly onChange: (minor: number | null) => void;
  readonly required?: boolean;
  readonly hint?: string;
}

/** An amount typed in major units ("12.50"); null while it is empty or not an amount. */
export function MoneyField({ label, currency, valueMinor, onChange, required = false, hint }: MoneyFieldProps) {
  const [text, setText] = useState<string | null>(null);
  const shown = text ?? (valueMinor === null ? '' : formatMinor(valueMinor, currency));
  const wrong = shown.trim() !== '' && !isAmount(shown, currency);
  return (
    <Field label={`${label} (${currency})`} hint={wrong ? `Write it as ${formatMinor(1250, currency)}` : hint}>
      <input
        type="text"
        inputMode="decimal"
        autoComplete="off"
        value={shown}
        required={required}
        aria-invalid={wrong}
        onChange={(event) => {
          setText(event.target.value);
          onChange(isAmount(event.target.value, currency) ? parseMajor(event.target.value, currency)! : null);
        }}
        onBlur={() => !wrong && setText(null)}
      />
    </Field>
  );
}

function isAmount(text: string, currency: string): boolean {
  const minor = parseMajor(text, currency);
  return minor !== undefined && minor >= 0;
}
