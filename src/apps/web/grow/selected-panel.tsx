import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { PackagePick } from './brush-bar.tsx';
import { copied, pasted, redone, removed, rewritten, selectedParts, turnedQuarter, undone, type Editor } from './editor.ts';
import { PART_KINDS } from './part-kinds.ts';
import { useTyped } from './use-typed.ts';

interface SelectedPanelProps {
  readonly editor: Editor;
  readonly blocks: readonly { readonly id: string; readonly name: string }[];
  readonly onChange: (editor: Editor) => void;
}

const MIXED = { id: '', name: 'Not said, or different ones' };

/** What is selected, to correct it, turn it, copy it or take it away. */
export function SelectedPanel({ editor, blocks, onChange }: SelectedPanelProps) {
  const parts = selectedParts(editor);
  const [first] = parts;
  const common = (of: 'kind' | 'value' | 'package' | 'block'): string =>
    parts.every((part) => part[of] === first?.[of]) ? (first?.[of] ?? '') : '';
  const ref = useTyped(first?.ref ?? '', (text) => onChange(rewritten(editor, { ref: text })));
  const value = useTyped(common('value'), (text) => onChange(rewritten(editor, { value: text })));
  if (!first) return null;
  const name = parts.length === 1 ? first.ref : `${parts.length} parts`;
  return (
    <section className="spot" aria-label={`Selected: ${name}`}>
      <div className="spot-head">
        <h3>{name}</h3>
        <div className="row">
          <button type="button" onClick={() => onChange(turnedQuarter(editor))}>
            Turn
          </button>
          <button type="button" onClick={() => onChange(copied(editor))}>
            Copy
          </button>
          <button type="button" onClick={() => onChange(removed(editor))}>
            Take away
          </button>
        </div>
      </div>
      <div className="fields">
        {parts.length === 1 && (
          <Field label="Reference">
            <input {...ref} maxLength={16} autoComplete="off" />
          </Field>
        )}
        <Pick
          label="What it is"
          options={common('kind') === '' ? [MIXED, ...PART_KINDS] : PART_KINDS}
          value={common('kind')}
          onChange={(kind) => kind !== '' && onChange(rewritten(editor, { kind }))}
        />
        <Field label="Its value">
          <input {...value} maxLength={60} autoComplete="off" />
        </Field>
        {parts.every(({ pins }) => pins.length === 0) && (
          <PackagePick kind={first.kind} value={common('package')} onChange={(named) => onChange(rewritten(editor, { package: named }))} />
        )}
        <Pick
          label="Its block"
          options={[MIXED, ...blocks]}
          value={common('block')}
          onChange={(block) => onChange(rewritten(editor, { block }))}
        />
      </div>
    </section>
  );
}

/** Steps back and on, and what is copied put down. */
export function StepButtons({ editor, onChange }: Omit<SelectedPanelProps, 'blocks'>) {
  return (
    <fieldset className="board-tools" aria-label="Steps">
      <button type="button" disabled={editor.past.length === 0} onClick={() => onChange(undone(editor))}>
        Undo
      </button>
      <button type="button" disabled={editor.future.length === 0} onClick={() => onChange(redone(editor))}>
        Redo
      </button>
      <button type="button" disabled={editor.clipboard.length === 0} onClick={() => onChange(pasted(editor))}>
        Paste
      </button>
    </fieldset>
  );
}
