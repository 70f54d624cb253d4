import { useState } from 'react';
import { chipReadings, type ChipReading } from '../../../bench/fit/index.ts';
import { Field } from '../ui/field.tsx';

/** The sizes of a part with two ends from its code; a code that means two sizes asks which. */
export function ChipCode({ onPick }: { readonly onPick: (drawing: ChipReading['drawing']) => void }) {
  const [code, setCode] = useState('');
  const readings = chipReadings(code);
  return (
    <>
      <Field label="Code of its size, if it has one" hint={hintOf(code, readings.length)}>
        <input value={code} inputMode="numeric" maxLength={5} onChange={(event) => setCode(event.target.value)} />
      </Field>
      <div className="row">
        {readings.map(({ label, drawing }) => (
          <button key={label} type="button" onClick={() => onPick(drawing)}>
            {label}
          </button>
        ))}
      </div>
    </>
  );
}

function hintOf(code: string, meanings: number): string {
  if (code.trim().length < 4) return 'Four or five digits, such as 0603';
  if (meanings === 0) return 'This code is not known: measure it, and type the sizes in below.';
  const which = meanings > 1 ? 'It is a code in inches and a metric one: measure its length to tell which. ' : '';
  return `${which}The length of the ends is not in the code: it is a guess, so measure that.`;
}
