import { useState } from 'react';
import { Field } from '../ui/field.tsx';
import type { Place } from './tap-picture.tsx';

interface PlaceFieldsProps {
  readonly title: string;
  /** What to tap, in which order. */
  readonly hint: string;
  readonly names: readonly string[];
  readonly places: readonly Place[];
  readonly action: string;
  readonly onTake: (places: readonly Place[]) => void;
}

/** Places on a photo as numbers, for those who cannot tap them. */
export function PlaceFields({ title, hint, names, places, action, onTake }: PlaceFieldsProps) {
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({});
  const textOf = (i: number): string => typed[i] ?? places[i]?.map(Math.round).join(', ') ?? '';
  const read = names.map((_, i) => placeIn(textOf(i)));
  return (
    <details className="why">
      <summary>{title}</summary>
      <p className="small">{hint} Or write them in pixels of the photo, across then down.</p>
      <div className="fields">
        {names.map((name, i) => (
          <Field key={name} label={name}>
            <input
              type="text"
              inputMode="numeric"
              value={textOf(i)}
              onChange={(event) => setTyped({ ...typed, [i]: event.target.value })}
            />
          </Field>
        ))}
      </div>
      <button
        type="button"
        disabled={read.includes(null)}
        onClick={() => {
          setTyped({});
          onTake(read as Place[]);
        }}
      >
        {action}
      </button>
    </details>
  );
}

function placeIn(text: string): Place | null {
  const match = /^\s*(\d+(?:\.\d+)?)\s*[, ]\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  return match ? [Number(match[1]), Number(match[2])] : null;
}
