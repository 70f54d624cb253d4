import { useState } from 'react';
import type { ModelFile } from '../../../bench/models/index.ts';
import { setFacts, type FactAnswer } from '../actions/set-fact.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { FromWhere } from './from-where.tsx';

const SECTIONS = [
  { id: 'blocks', name: 'Block' },
  { id: 'slots', name: 'Assembly' },
  { id: 'functions', name: 'Function' },
  { id: 'faults', name: 'Fault' },
  { id: 'checks', name: 'Check' },
  { id: 'remedies', name: 'Remedy' },
  { id: 'points', name: 'Point' },
  { id: 'steps', name: 'Step of opening' },
] as const;
type Section = (typeof SECTIONS)[number]['id'];

/** The number of an entry that a person is likely to know better, by section. */
const NUMBERS: Partial<Record<Section, { readonly field: string; readonly label: string; readonly most: number }>> = {
  faults: { field: 'rate', label: 'Share of faulty ones that have it (0 to 1)', most: 1 },
  checks: { field: 'minutes', label: 'Minutes', most: 10_000 },
  remedies: { field: 'minutes', label: 'Minutes', most: 10_000 },
  steps: { field: 'minutes', label: 'Minutes', most: 10_000 },
};

/** One entry of the model: its name, its number, or that the device has no such thing. */
export function EntryForm({ file }: { readonly file: ModelFile }) {
  const [section, setSection] = useState<Section>('faults');
  const [chosen, setChosen] = useState('');
  const entries: readonly { readonly id: string; readonly name: string }[] = file[section];
  const entry = entries.find(({ id }) => id === chosen) ?? entries[0];
  return (
    <div className="form">
      <div className="fields">
        <Pick label="What" options={SECTIONS} value={section} onChange={(id) => setSection(id as Section)} />
        {entry && <Pick label="Which" options={entries} value={entry.id} onChange={setChosen} />}
      </div>
      {entry ? (
        <OneEntry key={`${section} ${entry.id}`} file={file} section={section} entry={entry} />
      ) : (
        <p className="muted">The model has none.</p>
      )}
    </div>
  );
}

interface OneEntryProps {
  readonly file: ModelFile;
  readonly section: Section;
  readonly entry: { readonly id: string; readonly name: string };
}

function OneEntry({ file, section, entry }: OneEntryProps) {
  const { record, busy } = useRecorder();
  const number = NUMBERS[section];
  const before = number && String((entry as unknown as Record<string, unknown>)[number.field]);
  const [name, setName] = useState(entry.name);
  const [value, setValue] = useState(before ?? '');
  const fact = (field: string, to: unknown): FactAnswer => ({ section, id: entry.id, field, value: to });
  const facts = [
    ...(name.trim() !== entry.name ? [fact('name', name.trim())] : []),
    ...(number && value !== before ? [fact(number.field, Number(value))] : []),
  ];
  const remove = (): void => void record(setFacts(file.id, `${entry.name} is not there`, [{ section, id: entry.id, value: null }]));
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setFacts(file.id, entry.name, facts));
      }}
    >
      <p>
        <FromWhere section={section} id={entry.id} />
      </p>
      <div className="fields">
        <Field label="Name">
          <input value={name} required maxLength={200} onChange={(event) => setName(event.target.value)} />
        </Field>
        {number && (
          <Field label={number.label}>
            <input
              type="number"
              min={0}
              max={number.most}
              step="any"
              required
              value={value}
              onChange={(event) => setValue(event.target.value)}
            />
          </Field>
        )}
      </div>
      <div className="row">
        <button type="submit" disabled={busy || facts.length === 0}>
          Keep it so
        </button>
        <button type="button" className="quiet" disabled={busy} onClick={remove}>
          The device has no such thing
        </button>
      </div>
    </form>
  );
}
