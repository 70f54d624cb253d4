import { useState } from 'react';
import { FitError, partFromDrawing, type PartKind } from '../../../core/fit/index.ts';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { KIND_NAMES } from './kind-words.ts';
import type { NamedPattern } from './named-pattern.ts';
import { Troubles } from './troubles.tsx';

const SIDES = [
  { id: '1', name: 'One side' },
  { id: '2', name: 'Two sides' },
  { id: '4', name: 'Four sides' },
];

interface Drawn {
  readonly name: string;
  readonly kind: PartKind;
  readonly sides: 1 | 2 | 4;
  readonly pins: number;
  readonly pitchMm: number;
  readonly span: Limits;
  readonly foot: Limits;
  readonly width: Limits;
}
type Limits = readonly [least: number, most: number];

const BLANK: Drawn = {
  name: '',
  kind: 'gull-wing',
  sides: 2,
  pins: 8,
  pitchMm: 1.27,
  span: [5.8, 6.2],
  foot: [0.4, 1.27],
  width: [0.31, 0.51],
};

/** A part from the numbers of its drawing. */
export function DrawingForm({ onPattern }: { readonly onPattern: (made: NamedPattern) => void }) {
  const [drawn, setDrawn] = useState(BLANK);
  const [trouble, setTrouble] = useState<string | null>(null);
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
          onChange={(sides) => change({ sides: Number(sides) as 1 | 2 | 4 })}
        />
        <NumberField label="Pins in all" value={drawn.pins} min={1} max={2000} onChange={(pins) => change({ pins: Math.round(pins) })} />
        <Millimetres label="From pin to pin (mm)" value={drawn.pitchMm} onChange={(pitchMm) => change({ pitchMm })} />
      </div>
      <LimitFields legend="Over the feet, from tip to tip" value={drawn.span} onChange={(span) => change({ span })} />
      <LimitFields legend="Length of a foot on its pad" value={drawn.foot} onChange={(foot) => change({ foot })} />
      <LimitFields legend="Width of a foot" value={drawn.width} onChange={(width) => change({ width })} />
      <Troubles troubles={trouble === null ? [] : [trouble]} />
      <button type="submit">Lay this part over the place</button>
    </form>
  );
}

/** The part, or why its numbers make none. */
function madeOf({ name, kind, sides, pins, pitchMm, span, foot, width }: Drawn): NamedPattern | string {
  if ([span, foot, width].some(([least, most]) => most < least))
    return 'The largest of a size is below its smallest. Look at the drawing again.';
  try {
    const pattern = partFromDrawing({ name, kind, sides, pins, pitchMm, spanMm: span, footMm: foot, widthMm: width, heightMm: null });
    return { name, pattern };
  } catch (trouble) {
    if (!(trouble instanceof FitError)) throw trouble;
    return `These numbers make no part: ${trouble.message}. Look at the drawing again.`;
  }
}

function Millimetres({
  label,
  value,
  onChange,
}: {
  readonly label: string;
  readonly value: number;
  readonly onChange: (mm: number) => void;
}) {
  return <NumberField label={label} value={value} min={0} max={1000} step="any" onChange={onChange} />;
}

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
