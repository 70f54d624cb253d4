import { useEffect, useState } from 'react';
import { mmPerPx, patternFromPhoto, type PartKind } from '../../../core/fit/index.ts';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { KIND_NAMES, PAD_KINDS } from './kind-words.ts';
import type { NamedPattern } from './named-pattern.ts';
import { MarksTable } from './marks-table.tsx';
import { marked, NO_MARKS, nudged, scaleError, scaleOf, undone, type Brush, type Marks, type Tool } from './photo-marks.ts';
import { PhotoStage } from './photo-stage.tsx';
import { usePhoto } from './use-photo.ts';

const TOOLS: readonly { readonly id: Tool; readonly name: string; readonly how: string }[] = [
  {
    id: 'scale',
    name: 'Set the scale',
    how: 'Click both ends of a distance that you know, such as 20 mm of a ruler lying on the board. The longer, the better.',
  },
  { id: 'pad', name: 'Mark a pad', how: 'Click two opposite corners of the pad.' },
  {
    id: 'row',
    name: 'Mark a row',
    how: 'Say how many, then click the middle of the first and of the last pad. They get the size of the pad marked last.',
  },
];

const SHOWS = [
  { id: 'board', name: 'Pads on a board' },
  { id: 'above', name: 'The part itself, from above' },
  { id: 'below', name: 'The part itself, from below' },
];

interface PhotoDeskProps {
  readonly isPlace: boolean;
  readonly onPattern: (made: NamedPattern) => void;
}

/** Pads measured on a photo whose scale is set by two points. The photo stays on this device. */
export function PhotoDesk({ isPlace, onPattern }: PhotoDeskProps) {
  const { photo, trouble, load } = usePhoto();
  const [marks, setMarks] = useState<Marks>(NO_MARKS);
  const [brush, setBrush] = useState<Brush>({ tool: 'scale', kind: 'surface', round: false, count: 4 });
  const [apartMm, setApartMm] = useState(20);
  useEffect(() => setMarks(NO_MARKS), [photo]);
  const scale = scaleOf(marks, apartMm);
  return (
    <div className="form">
      <Field label="Photo, taken straight from above" hint="It stays on this device.">
        <input type="file" accept="image/jpeg,image/png,image/webp" onChange={(event) => load(event.target.files?.[0])} />
      </Field>
      {trouble !== null && (
        <p role="alert" className="trouble">
          {trouble}
        </p>
      )}
      {photo && (
        <>
          <ToolPicks brush={brush} onChange={setBrush} />
          <div className="fields">
            {brush.tool === 'scale' && (
              <NumberField
                label="Distance between the two points (mm)"
                value={apartMm}
                min={0.1}
                max={1000}
                step="any"
                onChange={setApartMm}
              />
            )}
            {brush.tool === 'row' && (
              <NumberField
                label="Pads in the row"
                value={brush.count}
                min={2}
                max={500}
                onChange={(count) => setBrush({ ...brush, count: Math.min(500, Math.round(count)) })}
              />
            )}
            {brush.tool === 'pad' && <PadPicks brush={brush} onChange={setBrush} />}
          </div>
          <PhotoStage
            photo={photo}
            marks={marks}
            onMark={(spot) => setMarks(marked(marks, spot, brush))}
            onNudge={(by) => setMarks(nudged(marks, by, brush.tool))}
            onUndo={() => setMarks(undone(marks, brush.tool))}
          />
          <p className="small" role="status">
            {stateOf(marks, brush.tool, scale && `1 pixel is ${mmPerPx(scale).toFixed(4)} mm ± ${(100 * scaleError(scale)).toFixed(1)} %.`)}
          </p>
          {scale && marks.pads.length > 0 && (
            <>
              <MarksTable pads={marks.pads} scale={scale} onChange={(pads) => setMarks({ ...marks, pads })} />
              <UseForm isPlace={isPlace} marks={marks} scale={scale} onPattern={onPattern} />
            </>
          )}
        </>
      )}
    </div>
  );
}

/** What the next click does, and what is known of the scale. */
function stateOf({ scale, pending, pads }: Marks, tool: Tool, known: string | null): string {
  if (tool === 'scale') return known ?? (scale.length === 1 ? 'Now the other end.' : 'The scale is not set yet.');
  if (known === null) return 'The scale is not set yet: set it before you use the pads.';
  if (tool === 'row' && pads.length === 0) return 'Mark one pad first: the row gets its size.';
  const waiting = pending.length > 0 ? (tool === 'pad' ? 'Now the opposite corner. ' : 'Now the middle of the last pad. ') : '';
  return `${waiting}${pads.length === 0 ? 'No pad yet' : `${pads.length} marked`}. ${known}`;
}

function ToolPicks({ brush, onChange }: { readonly brush: Brush; readonly onChange: (brush: Brush) => void }) {
  return (
    <fieldset className="unit-line">
      <legend>What a click does</legend>
      <div className="row">
        {TOOLS.map(({ id, name }) => (
          <button key={id} type="button" aria-pressed={brush.tool === id} onClick={() => onChange({ ...brush, tool: id })}>
            {name}
          </button>
        ))}
      </div>
      <p className="small muted">{TOOLS.find(({ id }) => id === brush.tool)!.how}</p>
    </fieldset>
  );
}

function PadPicks({ brush, onChange }: { readonly brush: Brush; readonly onChange: (brush: Brush) => void }) {
  return (
    <>
      <Pick
        label="What is marked"
        options={PAD_KINDS}
        value={brush.kind}
        onChange={(kind) => onChange({ ...brush, kind: kind as Brush['kind'] })}
      />
      <label className="check-line">
        <input type="checkbox" checked={brush.round} onChange={(event) => onChange({ ...brush, round: event.target.checked })} />
        It is round
      </label>
    </>
  );
}

interface UseFormProps extends PhotoDeskProps {
  readonly marks: Marks;
  readonly scale: NonNullable<ReturnType<typeof scaleOf>>;
}

function UseForm({ isPlace, marks, scale, onPattern }: UseFormProps) {
  const [name, setName] = useState('');
  const [kind, setKind] = useState<PartKind>('connector');
  const [shows, setShows] = useState('board');
  const use = (): void => {
    const pads = shows === 'below' ? marks.pads.map((pad) => ({ ...pad, xPx: -pad.xPx })) : marks.pads;
    const pattern = patternFromPhoto(name, kind, pads, scale);
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
