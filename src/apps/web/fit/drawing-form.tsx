import { useState } from 'react';
import { FitError, partFromDrawing, type DrawnPegs, type PartDrawing, type PartKind } from '../../../core/fit/index.ts';
import { wantedPads } from '../../../bench/fit/index.ts';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { ChipCode } from './chip-code.tsx';
import { KIND_NAMES } from './kind-words.ts';
import type { NamedPattern } from './named-pattern.ts';
import { Troubles } from './troubles.tsx';

const SIDES = [
  { id: '1', name: 'One side' },
  { id: '2', name: 'Two sides' },
  { id: '4', name: 'Four sides' },
];

type Drawn = Omit<PartDrawing, 'heightMm'>;
type Limits = Drawn['spanMm'];
type FieldsProps = { readonly drawn: Drawn; readonly change: (part: Partial<Drawn>) => void };

const BLANK: Drawn = {
  name: '',
  kind: 'gull-wing',
  sides: 2,
  pins: 8,
  pitchMm: 1.27,
  spanMm: [5.8, 6.2],
  footMm: [0.4, 1.27],
  widthMm: [0.31, 0.51],
  legMm: null,
  pegs: null,
};
const USUAL_LEG_MM = 0.5;
const USUAL_PEGS: DrawnPegs = { count: 2, apartMm: 6, inwardMm: 2.5, sizeMm: 0.9 };

/** A part from the numbers of its drawing. */
export function DrawingForm({ onPattern }: { readonly onPattern: (made: NamedPattern) => void }) {
  const [drawn, setDrawn] = useState(BLANK);
  const [trouble, setTrouble] = useState<string | null>(null);
  const wanted = wantedPads({ ...drawn, heightMm: null });
  const change = (part: Partial<Drawn>): void => setDrawn({ ...drawn, ...part });
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        const made = madeOf(drawn);
        setTrouble(typeof made === 'string' ? made : null);
        if (typeof made !== 'string') onPattern(made);
      }}
    >
      <div className="fields">
        <Field label="Name of the part">
          <input value={drawn.name} required maxLength={200} onChange={(event) => change({ name: event.target.value })} />
        </Field>
        <Pick label="What it is" options={KIND_NAMES} value={drawn.kind} onChange={(kind) => change({ kind: kind as PartKind })} />
        <Pick
          label="Feet on"
          options={SIDES}
          value={String(drawn.sides)}
          onChange={(sides) => change({ sides: Number(sides) as Drawn['sides'] })}
        />
        <NumberField label="Pins in all" value={drawn.pins} min={1} max={2000} onChange={(pins) => change({ pins: Math.round(pins) })} />
        <Millimetres label="From pin to pin (mm)" value={drawn.pitchMm} onChange={(pitchMm) => change({ pitchMm })} />
      </div>
      {drawn.kind === 'chip' && <ChipCode onPick={change} />}
      <FeetFields drawn={drawn} change={change} />
      <PegFields drawn={drawn} change={change} />
      {wanted !== null && <p className="small muted">{wanted}</p>}
      <Troubles troubles={trouble === null ? [] : [trouble]} />
      <button type="submit">Lay this part over the place</button>
    </form>
  );
}

/** Feet that lie on the board, or legs that go through it. */
function FeetFields({ drawn, change }: FieldsProps) {
  const { legMm } = drawn;
  return (
    <>
      <label className="check-line">
        <input
          type="checkbox"
          checked={legMm !== null}
          onChange={(event) => change({ legMm: event.target.checked ? USUAL_LEG_MM : null })}
        />
        Its legs go through the board
      </label>
      {legMm === null ? (
        <>
          <LimitFields legend="Over the feet, from tip to tip" value={drawn.spanMm} onChange={(spanMm) => change({ spanMm })} />
          <LimitFields legend="Length of a foot on its pad" value={drawn.footMm} onChange={(footMm) => change({ footMm })} />
          <LimitFields legend="Width of a foot" value={drawn.widthMm} onChange={(widthMm) => change({ widthMm })} />
        </>
      ) : (
        <>
          <LimitFields legend="From row to row, middle to middle" value={drawn.spanMm} onChange={(spanMm) => change({ spanMm })} />
          <Millimetres label="Thickness of a leg (mm)" value={legMm} onChange={(typed) => change({ legMm: typed })} />
        </>
      )}
    </>
  );
}

const PEG_COUNTS = [
  { id: '0', name: 'None' },
  { id: '1', name: 'One' },
  { id: '2', name: 'Two' },
];

function PegFields({ drawn: { pegs }, change }: FieldsProps) {
  const pick = (count: string): void =>
    change({ pegs: count === '0' ? null : { ...(pegs ?? USUAL_PEGS), count: Number(count) as DrawnPegs['count'] } });
  return (
    <div className="fields">
      <Pick label="Pegs" options={PEG_COUNTS} value={String(pegs?.count ?? 0)} onChange={pick} />
      {pegs && (
        <>
          <Millimetres label="Thickness of a peg (mm)" value={pegs.sizeMm} onChange={(sizeMm) => change({ pegs: { ...pegs, sizeMm } })} />
          {pegs.count === 2 && (
            <Millimetres label="From peg to peg (mm)" value={pegs.apartMm} onChange={(apartMm) => change({ pegs: { ...pegs, apartMm } })} />
          )}
          <Millimetres
            label="From the first row of feet inwards (mm)"
            least={-1000}
            value={pegs.inwardMm}
            onChange={(inwardMm) => change({ pegs: { ...pegs, inwardMm } })}
          />
        </>
      )}
    </div>
  );
}

/** The part, or why its numbers make none. */
function madeOf(drawn: Drawn): NamedPattern | string {
  try {
    return { name: drawn.name, pattern: partFromDrawing({ ...drawn, heightMm: null }) };
  } catch (trouble) {
    if (!(trouble instanceof FitError)) throw trouble;
    return `These numbers make no part: ${trouble.message}. Look at the drawing again.`;
  }
}

interface MillimetresProps {
  readonly label: string;
  readonly value: number;
  readonly least?: number;
  readonly onChange: (mm: number) => void;
}

const Millimetres = ({ label, value, least = 0, onChange }: MillimetresProps) => (
  <NumberField label={label} value={value} min={least} max={1000} step="any" onChange={onChange} />
);

interface LimitFieldsProps {
  readonly legend: string;
  readonly value: Limits;
  readonly onChange: (value: Limits) => void;
}

function LimitFields({ legend, value: [least, most], onChange }: LimitFieldsProps) {
  return (
    <fieldset className="unit-line">
      <legend>{legend}</legend>
      <div className="fields">
        <Millimetres label="Smallest (mm)" value={least} onChange={(typed) => onChange([typed, most])} />
        <Millimetres label="Largest (mm)" value={most} onChange={(typed) => onChange([least, typed])} />
      </div>
    </fieldset>
  );
}
