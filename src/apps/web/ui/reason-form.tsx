import { useState } from 'react';
import { Field } from './field.tsx';

interface ReasonFormProps {
  readonly label: string;
  readonly hint?: string;
  /** What pressing does, in the words of the button. */
  readonly action: string;
  readonly busy: boolean;
  /** Without a reason it cannot be done. */
  readonly required?: boolean;
  readonly done: (reason: string) => void;
}

/** One line that says why, and the button that does it. */
export function ReasonForm({ label, hint, action, busy, required = false, done }: ReasonFormProps) {
  const [reason, setReason] = useState('');
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        done(reason);
      }}
    >
      <Field label={label} {...(hint === undefined ? {} : { hint })}>
        <input
          value={reason}
          required={required}
          {...(required ? { maxLength: 200 } : {})}
          onChange={(event) => setReason(event.target.value)}
        />
      </Field>
      <button type="submit" disabled={busy}>
        {action}
      </button>
    </form>
  );
}
