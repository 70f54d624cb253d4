import { cloneElement, useId, type ReactElement } from 'react';

interface FieldProps {
  readonly label: string;
  readonly hint?: string | undefined;
  /** The one control: it gets its id, and the hint as its description. */
  readonly children: ReactElement<{ readonly id?: string; readonly 'aria-describedby'?: string | undefined }>;
}

/** A label over one control, with a hint or what is wrong below it. */
export function Field({ label, hint, children }: FieldProps) {
  const id = useId();
  const hintId = `${id}-hint`;
  return (
    <div className="field">
      <label className="field-label" htmlFor={id}>
        {label}
      </label>
      {cloneElement(children, { id, 'aria-describedby': hint === undefined ? undefined : hintId })}
      {hint !== undefined && (
        <span className="field-hint" id={hintId}>
          {hint}
        </span>
      )}
    </div>
  );
}
