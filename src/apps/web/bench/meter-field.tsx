import { useId } from 'react';
import type { MeterMode } from '../../../bench/events/index.ts';
import { reading } from '../format/reading.ts';
import type { MeterText } from './read-meter.ts';

interface MeterFieldProps {
  readonly label: string;
  readonly mode: MeterMode;
  readonly text: string;
  readonly onChange: (text: string) => void;
  /** What the text says; null while there is none. */
  readonly typed: MeterText | null;
}

/** What the meter shows, typed, with how it is understood below it. */
export function MeterField({ label, mode, text, onChange, typed }: MeterFieldProps) {
  const messageId = useId();
  return (
    <>
      <label className="field">
        <span className="field-label">{label}</span>
        <input
          className="meter"
          type="text"
          inputMode="none"
          autoComplete="off"
          value={text}
          aria-invalid={typed?.ok === false}
          aria-describedby={messageId}
          onChange={(event) => onChange(event.target.value)}
        />
      </label>
      <p id={messageId} className="small meter-echo" aria-live="polite">
        {typed === null ? 'As the meter shows it, such as 3.28, 4k7 or OL' : typed.ok ? `= ${reading(typed.value, mode)}` : typed.message}
      </p>
    </>
  );
}
