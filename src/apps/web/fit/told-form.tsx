import { useState } from 'react';
import type { PartKind } from '../../../core/fit/index.ts';
import type { Told } from '../../../bench/fit/index.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { CONTACT_SIDES, KIND_NAMES, WAYS } from './kind-words.ts';

/** What can be told: that which is asked for, and what was told before. */
export type Asked = Readonly<Record<'height' | 'mouth' | 'reach' | 'contacts', boolean>>;

interface ToldFormProps {
  readonly part: { readonly told: Told; readonly asked: Asked; readonly kind: PartKind };
  readonly place: { readonly told: Told; readonly asked: Asked };
  readonly onTell: (part: Told, place: Told) => void;
}

/** What the pads of a part and of its place do not say, told by the person and used in the answer. */
export function ToldForm({ part, place, onTell }: ToldFormProps) {
  const [ofPart, setOfPart] = useState(part.told);
  const [ofPlace, setOfPlace] = useState(place.told);
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        onTell(ofPart, ofPlace);
      }}
    >
      <fieldset className="unit-line">
        <legend>Of the part</legend>
        <div className="fields">
          <Pick
            label="What it is"
            options={KIND_NAMES}
            value={ofPart.kind ?? part.kind}
            onChange={(kind) => setOfPart({ ...ofPart, kind: kind as PartKind })}
          />
          <ToldFields height="Its height (mm)" told={ofPart} asked={part.asked} onChange={setOfPart} />
        </div>
      </fieldset>
      {Object.values(place.asked).some(Boolean) && (
        <fieldset className="unit-line">
          <legend>Of the place</legend>
          <div className="fields">
            <ToldFields height="Room above it (mm)" told={ofPlace} asked={place.asked} onChange={setOfPlace} />
          </div>
        </fieldset>
      )}
      <button type="submit">Use this in the answer</button>
    </form>
  );
}

interface ToldFieldsProps {
  readonly height: string;
  readonly told: Told;
  readonly asked: Asked;
  readonly onChange: (told: Told) => void;
}

function ToldFields({ height, told, asked, onChange }: ToldFieldsProps) {
  return (
    <>
      {asked.height && (
        <Millimetres label={height} value={told.heightMm} least={0.01} onChange={(heightMm) => onChange({ ...told, heightMm })} />
      )}
      {asked.mouth && (
        <Pick
          label="Its mouth faces"
          options={WAYS}
          value={told.facesDeg === null ? '' : String(told.facesDeg)}
          onChange={(way) => onChange({ ...told, facesDeg: way === '' ? null : Number(way) })}
        />
      )}
      {asked.reach && (
        <Millimetres
          label="Edge of the mouth from the origin of its pads (mm)"
          value={told.reachMm}
          onChange={(reachMm) => onChange({ ...told, reachMm })}
        />
      )}
      {asked.contacts && (
        <Pick
          label="It touches the ribbon on its"
          options={CONTACT_SIDES}
          value={told.contacts ?? ''}
          onChange={(side) => onChange({ ...told, contacts: side === '' ? null : (side as Told['contacts']) })}
        />
      )}
    </>
  );
}

interface MillimetresProps {
  readonly label: string;
  readonly value: number | null;
  readonly least?: number;
  readonly onChange: (mm: number | null) => void;
}

/** A length that may stay unknown. */
function Millimetres({ label, value, least = -1000, onChange }: MillimetresProps) {
  return (
    <Field label={label} hint="Leave it empty while it is not measured">
      <input
        type="number"
        inputMode="decimal"
        step="any"
        min={least}
        max={1000}
        defaultValue={value ?? ''}
        onChange={(event) => onChange(Number.isFinite(event.target.valueAsNumber) ? event.target.valueAsNumber : null)}
      />
    </Field>
  );
}
