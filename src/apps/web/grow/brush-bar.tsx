import { packageNames } from '../../../bench/models/packages.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { NumberField } from '../ui/number-field.tsx';
import { Pick } from '../ui/pick.tsx';
import { isSameLook, MOST_PINS, turnedQuarter, upcomingRef, withBrush, withLook, withRef, type Editor, type Look } from './editor.ts';
import { PART_KINDS, kindOf } from './part-kinds.ts';
import { useTyped } from './use-typed.ts';

interface BrushBarProps {
  readonly editor: Editor;
  readonly blocks: readonly { readonly id: string; readonly name: string }[];
  readonly onChange: (editor: Editor) => void;
}

const TOOLS = [
  { value: 'place', label: 'Place parts' },
  { value: 'row', label: 'Row of pins' },
  { value: 'grid', label: 'Rows and grids' },
  { value: 'select', label: 'Select' },
] as const;

const HOW = {
  place: 'Click the middle of each part. The next one is like it, with the next number.',
  row: 'Click the middle of pin 1, then of the last pin.',
  grid: 'Click the middle of pin 1, then of the pin in the opposite corner.',
  select: 'Click a part; with Shift several. Drag, or use the arrow keys, to move what is selected.',
} as const;

/** What the next click does: the tool, and what the next part is. */
export function BrushBar({ editor, blocks, onChange }: BrushBarProps) {
  const { brush } = editor;
  return (
    <div className="form brush-bar">
      <Chips legend="What a click does" options={TOOLS} value={brush.tool} onChange={(tool) => onChange(withBrush(editor, { tool }))} />
      <p className="small muted">{HOW[brush.tool]}</p>
      {brush.tool !== 'select' && <LookFields editor={editor} blocks={blocks} onChange={onChange} />}
      {brush.tool !== 'select' && editor.recent.length > 0 && <RecentLooks editor={editor} onChange={onChange} />}
    </div>
  );
}

function LookFields({ editor, blocks, onChange }: BrushBarProps) {
  const { brush } = editor;
  const ref = useTyped(upcomingRef(editor), (text) => onChange(withRef(editor, text)));
  const value = useTyped(brush.value, (text) => onChange(withBrush(editor, { value: text })));
  return (
    <div className="fields">
      <Pick label="Kind" options={PART_KINDS} value={brush.kind} onChange={(kind) => onChange(withBrush(editor, { kind }))} />
      <Field label="Next reference">
        <input {...ref} maxLength={16} autoComplete="off" />
      </Field>
      <Field label="Value">
        <input {...value} maxLength={60} autoComplete="off" />
      </Field>
      {brush.tool === 'place' && (
        <PackagePick kind={brush.kind} value={brush.package} onChange={(name) => onChange(withBrush(editor, { package: name }))} />
      )}
      {brush.tool === 'place' && (
        <button type="button" className="field-button" onClick={() => onChange(turnedQuarter({ ...editor, selected: new Set() }))}>
          Turn the next: {brush.rotation}°
        </button>
      )}
      {brush.tool === 'row' && (
        <NumberField
          label="Pins"
          value={brush.pins}
          min={1}
          max={MOST_PINS}
          onChange={(pins) => onChange(withBrush(editor, { pins: held(pins) }))}
        />
      )}
      {brush.tool === 'grid' && <GridFields editor={editor} onChange={onChange} />}
      <Pick
        label="Block"
        options={[{ id: '', name: 'Not said' }, ...blocks]}
        value={brush.block}
        onChange={(block) => onChange(withBrush(editor, { block }))}
      />
    </div>
  );
}

const held = (pins: number): number => Math.min(MOST_PINS, Math.max(1, Math.round(pins)));

function GridFields({ editor, onChange }: Omit<BrushBarProps, 'blocks'>) {
  const { grid } = editor.brush;
  const set = (change: Partial<typeof grid>): void => onChange(withBrush(editor, { grid: { ...grid, ...change } }));
  return (
    <>
      <NumberField
        label="Pins in a row"
        value={grid.columns}
        min={1}
        max={20}
        onChange={(columns) => set({ columns: Math.min(20, held(columns)) })}
      />
      <NumberField label="Rows" value={grid.rows} min={1} max={10} onChange={(rows) => set({ rows: Math.min(10, held(rows)) })} />
      <Pick
        label="Counted"
        options={[
          { id: 'around', name: 'Around, as the legs of a chip' },
          { id: 'rows', name: 'Row by row' },
        ]}
        value={grid.counting}
        onChange={(counting) => set({ counting: counting as typeof grid.counting })}
      />
    </>
  );
}

interface PackagePickProps {
  readonly kind: string;
  readonly value: string;
  readonly onChange: (name: string) => void;
}

const COUNTED = /-n$/;

/** Packages that the kind mostly comes in, then all others; a package with a count is typed with its number. */
export function PackagePick({ kind, value, onChange }: PackagePickProps) {
  const usual = kindOf(kind).packages;
  const others = packageNames().filter((name) => !COUNTED.test(name) && !usual.includes(name));
  const known = [...usual, ...others];
  const counts = usual.flatMap((name) => (/-\d+$/.test(name) ? moreOf(name) : []));
  const all = [...new Set([...known, ...counts, ...(value === '' ? [] : [value])])];
  return <Pick label="Package" options={all.map((name) => ({ id: name, name }))} value={value} onChange={onChange} />;
}

const MOST_OFFERED = 40;

/** SLOT-12 in all its lengths, where packages of its family may have any count of contacts. */
const moreOf = (name: string): string[] => {
  const family = name.replace(/-\d+$/, '');
  if (!packageNames().includes(`${family}-n`)) return [];
  return Array.from({ length: MOST_OFFERED }, (_, i) => `${family}-${i + 1}`);
};

function RecentLooks({ editor, onChange }: Omit<BrushBarProps, 'blocks'>) {
  return (
    <fieldset className="recent-looks">
      <legend className="small">Once more: a click, or its number on the picture</legend>
      <div className="row">
        {editor.recent.map((look, i) => (
          <button
            key={lookWords(look)}
            type="button"
            aria-pressed={isSameLook(look, editor.brush)}
            onClick={() => onChange(withLook(editor, look))}
          >
            <span className="muted">{i + 1}</span> {lookWords(look)}
          </button>
        ))}
      </div>
    </fieldset>
  );
}

const lookWords = ({ kind, letters, value, package: name, rotation, block }: Look): string =>
  [
    letters === kindOf(kind).letters ? kindOf(kind).name : `${kindOf(kind).name} ${letters}`,
    value,
    name,
    rotation === 0 ? '' : `${rotation}°`,
    block,
  ]
    .filter(Boolean)
    .join(', ');
