import { useState } from 'react';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { PATTERN_FILES, readPatterns, type NamedPattern } from './named-pattern.ts';
import { PhotoDesk } from './photo-desk.tsx';
import { SavePads } from './save-pads.tsx';
import { Troubles } from './troubles.tsx';

interface PlaceSourceProps {
  readonly place: NamedPattern | null;
  readonly onPlace: (place: NamedPattern | null) => void;
}

/** The pads of the place: from a file, or measured on a photo. */
export function PlaceSource({ place, onPlace }: PlaceSourceProps) {
  const [troubles, setTroubles] = useState<readonly string[]>([]);
  const take = async (files: FileList | null): Promise<void> => {
    const { read, troubles: found } = await readPatterns(files);
    setTroubles(found);
    onPlace(read[0] ?? null);
  };
  return (
    <>
      <Field label="Pads of the place on the board" hint="A land pattern (.kicad_mod) or a table of pads (CSV)">
        <input type="file" accept={PATTERN_FILES} onChange={(event) => void take(event.target.files)} />
      </Field>
      <Troubles troubles={troubles} />
      <Fold title="Measure the pads of the place on a photo">
        <PhotoDesk isPlace onPattern={onPlace} />
      </Fold>
      {place && (
        <p className="row">
          <output>
            The place is {place.name}, with {place.pattern.pads.length} pads and holes.
          </output>
          <SavePads {...place} />
        </p>
      )}
    </>
  );
}
