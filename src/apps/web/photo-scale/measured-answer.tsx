import { useState } from 'react';
import { layingSaid, layingTrouble, lengthWords, measuredNote } from '../../../bench/photo-scale/index.ts';
import { measured, type BoardSide, type Point, type Registration, type RegistrationRefusal } from '../../../core/vision/index.ts';
import { writeNote } from '../actions/write-note.ts';
import { hitAt } from '../board/drawn-part.ts';
import { useUnit } from '../bench/unit-context.ts';
import { PlaceFields } from '../measured/place-fields.tsx';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Why } from '../ui/why.tsx';

interface MeasuredAnswerProps {
  readonly place: Registration | RegistrationRefusal;
  readonly side: BoardSide;
  readonly ends: readonly Point[];
  readonly onEnds: (ends: readonly Point[]) => void;
}

/** A finger is this broad on the board, mm. */
const REACH_MM = 0.5;

/** The distance of two tapped places, where they lie, and a note of it. */
export function MeasuredAnswer({ place, side, ends, onEnds }: MeasuredAnswerProps) {
  const { file, parts } = useUnit();
  const { record, busy } = useRecorder();
  const [what, setWhat] = useState('');
  if (!place.ok) return <output>{layingTrouble(place)}</output>;
  const found = ends.length === 2 ? measured(place, ends[0]!, ends[1]!) : null;
  const note = found && measuredNote(found, what);
  const partAt = ([x, y]: Point): string => hitAt(parts, side, { x, y }, REACH_MM)?.part.ref ?? 'no known part';
  return (
    <div className="form">
      <output aria-live="polite">
        {found ? (
          <>
            <strong>{lengthWords(found.apart)}</strong> apart; {lengthWords(found.alongX)} across, {lengthWords(found.alongY)} down.
          </>
        ) : (
          'Tap both ends, or two opposite corners of a pad.'
        )}
      </output>
      <PlaceFields
        title="Ends on the photo"
        hint="Tap one end, then the other."
        names={['One end', 'Other end']}
        places={ends}
        action="Take these ends"
        onTake={onEnds}
      />
      {found && (
        <Why
          lines={[
            layingSaid(place),
            `One end lies on ${partAt(found.from)}, the other on ${partAt(found.to)}.`,
            'A tap is taken to be right to 1.5 px (from memory); the marks add their own disagreement, the more the longer the stretch.',
          ]}
        />
      )}
      {note && (
        <>
          <Field label="What it is" hint="such as the pitch of a connector">
            <input type="text" value={what} onChange={(event) => setWhat(event.target.value)} />
          </Field>
          <button type="button" className="main" disabled={busy} onClick={() => void record(writeNote(file.row.id, note))}>
            Note it in the log
          </button>
        </>
      )}
    </div>
  );
}
