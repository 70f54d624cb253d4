import { useState } from 'react';
import type { ModelFile } from '../../../bench/models/index.ts';
import { setFacts, type FactAnswer } from '../actions/set-fact.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { MoneyField } from '../ui/money-field.tsx';
import { Pick } from '../ui/pick.tsx';

const CHEMISTRIES = [
  { id: 'li-ion', name: 'Lithium' },
  { id: 'nimh', name: 'Nickel' },
  { id: 'alkaline', name: 'Alkaline, not charged' },
  { id: 'other', name: 'Another' },
];

/** The fields of a model that stand by themselves. What was changed is noted, and nothing else, so the rest stays inherited. */
export function HeadForm({ file }: { readonly file: ModelFile }) {
  const { record, busy } = useRecorder();
  const [working, setWorking] = useState<number | null>(file.prices.working);
  const [forParts, setForParts] = useState<number | null>(file.prices.for_parts);
  const [volts, setVolts] = useState(String(file.cell?.volts ?? ''));
  const [chemistry, setChemistry] = useState<string>(file.cell?.chemistry ?? 'other');
  const [width, setWidth] = useState(String(file.board?.width_mm ?? ''));
  const [height, setHeight] = useState(String(file.board?.height_mm ?? ''));
  const [about, setAbout] = useState(file.about);
  const changed = (): FactAnswer[] => [
    ...(working !== null && working !== file.prices.working ? [head('prices', working, 'working')] : []),
    ...(forParts !== null && forParts !== file.prices.for_parts ? [head('prices', forParts, 'for_parts')] : []),
    ...whole('cell', file.cell, volts === '' ? null : { volts: Number(volts), chemistry }),
    ...whole('board', file.board, width === '' || height === '' ? null : { width_mm: Number(width), height_mm: Number(height) }),
    ...(about.trim() !== file.about ? [head('about', about.trim())] : []),
  ];
  const facts = changed();
  const number = (label: string, value: string, set: (text: string) => void) => (
    <Field label={label}>
      <input type="number" inputMode="decimal" min={0} step="any" value={value} onChange={(event) => set(event.target.value)} />
    </Field>
  );
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void record(setFacts(file.id, `what is known of ${file.name}`, facts));
      }}
    >
      <div className="fields">
        <MoneyField label="A working one" currency={file.currency} valueMinor={working} onChange={setWorking} required />
        <MoneyField label="A faulty one" currency={file.currency} valueMinor={forParts} onChange={setForParts} required />
        {number('Voltage of its battery (V)', volts, setVolts)}
        <Pick label="Kind of battery" options={CHEMISTRIES} value={chemistry} onChange={setChemistry} />
        {number('Width of its board (mm)', width, setWidth)}
        {number('Height of its board (mm)', height, setHeight)}
      </div>
      <Field label="About it">
        <textarea rows={3} maxLength={2000} value={about} onChange={(event) => setAbout(event.target.value)} />
      </Field>
      <button type="submit" disabled={busy || facts.length === 0}>
        Keep what I changed
      </button>
    </form>
  );
}

const head = (id: string, value: unknown, field?: string): FactAnswer => ({
  section: 'head',
  id,
  value,
  ...(field === undefined ? {} : { field }),
});

const whole = (id: string, before: unknown, after: unknown): FactAnswer[] =>
  JSON.stringify(before ?? null) === JSON.stringify(after) ? [] : [head(id, after)];
