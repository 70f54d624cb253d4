import { useState } from 'react';
import { CAUTION_WORDS } from '../../../bench/caution-words.ts';
import type { Caution, ModelFile } from '../../../bench/models/index.ts';
import { recordStep } from '../actions/record-step.ts';
import { PhotoStage } from '../fit/photo-stage.tsx';
import { CAUTION_NAMES } from '../recipes/caution-names.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { BoardPhotoField } from './board-photo-field.tsx';
import { afterStep, DRIVES, FIRST_STEP, isComplete, stepName, type StepFields } from './opening-record.ts';
import { placesAsMarks } from './photo-draft.ts';
import { useKeptPhoto } from './use-kept-photo.ts';

const DEEDS = [
  { value: 'screw', label: 'Screws' },
  { value: 'unlatch', label: 'Unlatch' },
  { value: 'unplug', label: 'Unplug' },
  { value: 'lift', label: 'Lift' },
] as const;
const SIDES = [
  { id: 'back', name: 'Back' },
  { id: 'front', name: 'Front' },
];
const REACHES = [
  { id: '', name: 'As open as before' },
  { id: 'open', name: 'Open' },
  { id: 'board-out', name: 'Board out' },
];
const ALL_CAUTIONS = Object.keys(CAUTION_WORDS) as Caution[];

/** One step of opening, said in a few taps while it is done. */
export function StepForm({ file }: { readonly file: ModelFile }) {
  const { record, busy } = useRecorder();
  const [fields, setFields] = useState<StepFields>(FIRST_STEP);
  const set = (change: Partial<StepFields>): void => setFields({ ...fields, ...change });
  const note = async (): Promise<void> => {
    if (await record(recordStep(file, fields))) setFields(afterStep(fields));
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (isComplete(fields)) void note();
      }}
    >
      <Chips legend="What you do" options={DEEDS} value={fields.deed} onChange={(deed) => set({ deed })} />
      <div className="fields">
        {fields.deed === 'screw' ? <ScrewFields fields={fields} set={set} /> : <WhatField fields={fields} set={set} />}
        <Pick label="Side that is up" options={SIDES} value={fields.side} onChange={(side) => set({ side: side as StepFields['side'] })} />
        <Pick
          label="How open it is then"
          options={REACHES}
          value={fields.reaches}
          onChange={(reaches) => set({ reaches: reaches as StepFields['reaches'] })}
        />
      </div>
      <Ticks
        legend="Take care of"
        options={ALL_CAUTIONS.map((id) => ({ id, name: CAUTION_NAMES[id] }))}
        ticked={fields.cautions}
        onChange={(cautions) => set({ cautions })}
      />
      <Ticks legend="Can be taken out or reached then" options={file.slots} ticked={fields.frees} onChange={(frees) => set({ frees })} />
      <PlacesOnPhoto fields={fields} set={set} />
      <button type="submit" className="main" disabled={busy || !isComplete(fields)}>
        Note: {isComplete(fields) ? stepName(fields) : 'say what comes off first'}
      </button>
    </form>
  );
}

interface PartProps {
  readonly fields: StepFields;
  readonly set: (change: Partial<StepFields>) => void;
}

function ScrewFields({ fields, set }: PartProps) {
  return (
    <>
      <datalist id="usual-drives">
        {DRIVES.map((drive) => (
          <option key={drive} value={drive}>
            {drive}
          </option>
        ))}
      </datalist>
      <Field label="Drive">
        <input value={fields.drive} list="usual-drives" maxLength={60} onChange={(event) => set({ drive: event.target.value })} />
      </Field>
      <NumberField label="Length (mm)" value={fields.lengthMm} min={0.5} max={500} step="any" onChange={(lengthMm) => set({ lengthMm })} />
      {fields.places.length === 0 && (
        <NumberField label="How many" value={fields.count} min={1} max={200} onChange={(count) => set({ count: Math.round(count) })} />
      )}
    </>
  );
}

const WhatField = ({ fields, set }: PartProps) => (
  <Field label="What" hint="Such as the ribbon of the display, or the back shell">
    <input value={fields.what} maxLength={100} onChange={(event) => set({ what: event.target.value })} />
  </Field>
);

interface TicksProps<T extends string> {
  readonly legend: string;
  readonly options: readonly { readonly id: T; readonly name: string }[];
  readonly ticked: readonly T[];
  readonly onChange: (ticked: readonly T[]) => void;
}

/** Any number of a few things. */
function Ticks<T extends string>({ legend, options, ticked, onChange }: TicksProps<T>) {
  const toggle = (id: T): void => onChange(ticked.includes(id) ? ticked.filter((each) => each !== id) : [...ticked, id]);
  return (
    <fieldset className="chips">
      <legend>{legend}</legend>
      <div className="chip-row">
        {options.map(({ id, name }) => (
          <label key={id} className="chip">
            <input type="checkbox" checked={ticked.includes(id)} onChange={() => toggle(id)} />
            <span>{name}</span>
          </label>
        ))}
      </div>
    </fieldset>
  );
}

/** A photo of the side that is up, on which each place is tapped. */
function PlacesOnPhoto({ fields, set }: PartProps) {
  const shown = useKeptPhoto(fields.photo);
  return (
    <>
      <BoardPhotoField label="photo of this side" photo={fields.photo} onChange={(photo) => set({ photo, places: [] })} />
      {shown && (
        <>
          <p className="small muted">Tap each screw, or the place that you pry or pull.</p>
          <PhotoStage
            photo={shown}
            marks={placesAsMarks(fields.places)}
            title={`The photo with ${fields.places.length} places`}
            onMark={(spot) => set({ places: [...fields.places, spot] })}
            onNudge={({ x, y }) =>
              set({ places: fields.places.map((at, i) => (i === fields.places.length - 1 ? { x: at.x + x, y: at.y + y } : at)) })
            }
            onUndo={() => set({ places: fields.places.slice(0, -1) })}
          />
        </>
      )}
    </>
  );
}
