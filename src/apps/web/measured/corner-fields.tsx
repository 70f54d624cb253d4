import { useState } from 'react';
import { Field } from '../ui/field.tsx';
import type { Corner } from './display-picture.tsx';

const NAMES = ['Upper left', 'Upper right', 'Lower right', 'Lower left'] as const;

/** The corners of the display as numbers, for those who cannot tap them. */
export function CornerFields({
  corners,
  onJudge,
}: {
  readonly corners: readonly Corner[];
  readonly onJudge: (corners: readonly Corner[]) => void;
}) {
  const [typed, setTyped] = useState<Readonly<Record<number, string>>>({});
  const textOf = (i: number): string => typed[i] ?? corners[i]?.map(Math.round).join(', ') ?? '';
  const read = NAMES.map((_, i) => cornerIn(textOf(i)));
  return (
    <details className="why">
      <summary>Corners of the display</summary>
      <p className="small">
        Tap the four corners on the photo, upper left first, then clockwise. Or write them in pixels of the photo, across then down.
      </p>
      <div className="fields">
        {NAMES.map((name, i) => (
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
          onJudge(read as Corner[]);
        }}
      >
        Take these corners
      </button>
    </details>
  );
}

function cornerIn(text: string): Corner | null {
  const match = /^\s*(\d+(?:\.\d+)?)\s*[, ]\s*(\d+(?:\.\d+)?)\s*$/.exec(text);
  return match ? [Number(match[1]), Number(match[2])] : null;
}
