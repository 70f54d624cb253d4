import { useState } from 'react';
import { patternFromPhoto, type MarkedPad, type PartKind, type PhotoScale } from '../../../core/fit/index.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { KIND_NAMES } from './kind-words.ts';
import type { NamedPattern } from './named-pattern.ts';

const SHOWS = [
  { id: 'board', name: 'Pads on a board' },
  { id: 'above', name: 'The part itself, from above' },
  { id: 'below', name: 'The part itself, from below' },
];

interface UsePadsFormProps {
  readonly isPlace: boolean;
  readonly pads: readonly MarkedPad[];
  readonly scale: PhotoScale;
  readonly onPattern: (made: NamedPattern) => void;
}

/** What the marked pads are, and their use in the answer. */
export function UsePadsForm({ isPlace, pads, scale, onPattern }: UsePadsFormProps) {
  const [name, setName] = useState('');
  const [kind, setKind] = useState<PartKind>('connector');
  const [shows, setShows] = useState('board');
  const use = (): void => {
    const seen = shows === 'below' ? pads.map((pad) => ({ ...pad, xPx: -pad.xPx })) : pads;
    const pattern = patternFromPhoto(name, kind, seen, scale);
    onPattern({ name, pattern: { ...pattern, basis: shows === 'board' ? 'lands' : 'feet' } });
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        use();
      }}
    >
      <div className="fields">
        <Field label={isPlace ? 'Name of the place' : 'Name of the part'}>
          <input value={name} required maxLength={200} onChange={(event) => setName(event.target.value)} />
        </Field>
        <Pick label="What it is" options={KIND_NAMES} value={kind} onChange={(picked) => setKind(picked as PartKind)} />
        {!isPlace && <Pick label="What the photo shows" options={SHOWS} value={shows} onChange={setShows} />}
      </div>
      <button type="submit">{isPlace ? 'Use these pads as the place' : 'Lay this part over the place'}</button>
    </form>
  );
}
