import { useState } from 'react';
import { mmPerPx } from '../../../core/fit/index.ts';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { PAD_KINDS } from './kind-words.ts';
import type { NamedPattern } from './named-pattern.ts';
import { MarksTable } from './marks-table.tsx';
import { marked, NO_MARKS, nudged, scaleError, scaleOf, undone, type Brush, type Marks, type Tool } from './photo-marks.ts';
import { PhotoStage } from './photo-stage.tsx';
import type { LoadedPhoto } from './use-photo.ts';
import { UsePadsForm } from './use-pads-form.tsx';

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

interface MarkDeskProps {
  readonly photo: LoadedPhoto;
  readonly isPlace: boolean;
  readonly onPattern: (made: NamedPattern) => void;
}

/** Marking on one photo, and what came of it in mm. */
export function MarkDesk({ photo, isPlace, onPattern }: MarkDeskProps) {
  const [marks, setMarks] = useState<Marks>(NO_MARKS);
  const [brush, setBrush] = useState<Brush>({ tool: 'scale', kind: 'surface', round: false, count: 4 });
  const [apartMm, setApartMm] = useState(20);
  const scale = scaleOf(marks, apartMm);
  const known = scale && `1 pixel is ${mmPerPx(scale).toFixed(4)} mm ± ${(100 * scaleError(scale)).toFixed(1)} %.`;
  return (
    <>
      <ToolPicks brush={brush} onChange={setBrush} />
      <BrushFields brush={brush} apartMm={apartMm} onBrush={setBrush} onApart={setApartMm} />
      <PhotoStage
        photo={photo}
        marks={marks}
        onMark={(spot) => setMarks(marked(marks, spot, brush))}
        onNudge={(by) => setMarks(nudged(marks, by, brush.tool))}
        onUndo={() => setMarks(undone(marks, brush.tool))}
      />
      <output className="small">{stateOf(marks, brush.tool, known)}</output>
      {scale && marks.pads.length > 0 && (
        <>
          <MarksTable pads={marks.pads} scale={scale} onChange={(pads) => setMarks({ ...marks, pads })} />
          <UsePadsForm isPlace={isPlace} pads={marks.pads} scale={scale} onPattern={onPattern} />
        </>
      )}
    </>
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

interface BrushFieldsProps {
  readonly brush: Brush;
  readonly apartMm: number;
  readonly onBrush: (brush: Brush) => void;
  readonly onApart: (mm: number) => void;
}

/** What the chosen tool has to know. */
function BrushFields({ brush, apartMm, onBrush, onApart }: BrushFieldsProps) {
  return (
    <div className="fields">
      {brush.tool === 'scale' && (
        <NumberField label="Distance between the two points (mm)" value={apartMm} min={0.1} max={1000} step="any" onChange={onApart} />
      )}
      {brush.tool === 'row' && (
        <NumberField
          label="Pads in the row"
          value={brush.count}
          min={2}
          max={500}
          onChange={(count) => onBrush({ ...brush, count: Math.min(500, Math.round(count)) })}
        />
      )}
      {brush.tool === 'pad' && (
        <>
          <Pick
            label="What is marked"
            options={PAD_KINDS}
            value={brush.kind}
            onChange={(kind) => onBrush({ ...brush, kind: kind as Brush['kind'] })}
          />
          <label className="check-line">
            <input type="checkbox" checked={brush.round} onChange={(event) => onBrush({ ...brush, round: event.target.checked })} />
            It is round
          </label>
        </>
      )}
    </div>
  );
}
