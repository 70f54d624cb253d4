import { useState } from 'react';
import { keepPreviousData, useQuery } from '@tanstack/react-query';
import type { PlacementImportView, PlacementQuestion } from '../../../bench/views/index.ts';
import { PLACEMENT_FIELDS, type PlacementField } from '../../../core/netting/placement-columns.ts';
import { takePlacement } from '../actions/take-netlist.ts';
import { askWith } from '../api/ask.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';

type Mapping = PlacementImportView['mapping'];

const WORDS: Readonly<Record<PlacementField, string>> = {
  ...{ ref: 'Reference', x: 'Place across', y: 'Place up', rotation: 'Turn', side: 'Side', value: 'Value' },
  ...{ package: 'Package', block: 'Block', nets: 'Nets' },
};
const UNITS = [
  { id: 'mm', name: 'mm' },
  { id: 'um', name: 'µm' },
  { id: 'mil', name: 'mil' },
  { id: 'inch', name: 'inch' },
];
const NO_COLUMN = '';

/** A table of places from any program: its columns are guessed, the person corrects them, and sees what does not agree before it is taken. */
export function TakePlacement({ id }: { readonly id: string }) {
  const [text, setText] = useState('');
  const [mapping, setMapping] = useState<Mapping | undefined>();
  const [mirrored, setMirrored] = useState(false);
  const question: PlacementQuestion = { text, back_is_mirrored: mirrored, ...(mapping ? { mapping } : {}) };
  const found = useQuery({
    queryKey: ['placement', id, question],
    enabled: text !== '',
    placeholderData: keepPreviousData,
    queryFn: ({ signal }) => askWith<PlacementImportView>(`/api/models/${encodeURIComponent(id)}/placement`, question, signal),
  });
  const load = (loaded: string): void => {
    setMapping(undefined);
    setText(loaded);
  };
  return (
    <>
      <Field label="Table of places (CSV) from any program" hint="You see what each column is taken for before anything is kept.">
        <input type="file" accept=".csv,.txt" onChange={(event) => void event.target.files?.[0]?.text().then(load)} />
      </Field>
      {text !== '' && (
        <Answer query={found}>
          {(view) => (
            <>
              <Columns view={view} setMapping={setMapping} />
              <label className="check-line">
                <input type="checkbox" checked={mirrored} onChange={(event) => setMirrored(event.target.checked)} />
                The back is counted as one looks at the back
              </label>
              <Found id={id} view={view} />
            </>
          )}
        </Answer>
      )}
    </>
  );
}

function Columns({ view, setMapping }: { readonly view: PlacementImportView; readonly setMapping: (mapping: Mapping) => void }) {
  const { mapping, table } = view;
  const header = table[mapping.header_rows - 1] ?? [];
  const sample = table[mapping.header_rows] ?? [];
  const columns = sample.map((cell, column) => ({ id: String(column), name: `${header[column] ?? `Column ${column + 1}`}: ${cell}` }));
  const choose = (field: PlacementField, column: string): void => {
    const { [field]: _before, ...others } = mapping.columns;
    setMapping({ ...mapping, columns: column === NO_COLUMN ? others : { ...others, [field]: Number(column) } });
  };
  return (
    <div className="fields">
      {PLACEMENT_FIELDS.map((field) => (
        <Pick
          key={field}
          label={WORDS[field]}
          options={[{ id: NO_COLUMN, name: 'in no column' }, ...columns]}
          value={String(mapping.columns[field] ?? NO_COLUMN)}
          onChange={(column) => choose(field, column)}
        />
      ))}
      <Pick
        label="Lengths are in"
        options={UNITS}
        value={mapping.unit}
        onChange={(unit) => setMapping({ ...mapping, unit: unit as Mapping['unit'] })}
      />
    </div>
  );
}

function Found({ id, view }: { readonly id: string; readonly view: PlacementImportView }) {
  const { record, busy } = useRecorder();
  const { parts, problems, mismatches } = view;
  return (
    <>
      {problems.length > 0 && (
        <ul className="check-list" role="alert">
          {problems.map(({ line, field, message, next }) => (
            <li key={`${line} ${field}`}>
              Line {line}, {field}: {message}. {next}
            </li>
          ))}
        </ul>
      )}
      {mismatches.length > 0 && (
        <ul className="check-list">
          {mismatches.map(({ text, mends }) => (
            <li key={text}>
              {text}
              <ul>
                {mends.map((mend) => (
                  <li key={mend}>{mend}</li>
                ))}
              </ul>
            </li>
          ))}
        </ul>
      )}
      <button type="button" disabled={busy || parts.length === 0} onClick={() => void record(takePlacement(id, parts))}>
        Take {counted(parts.length, 'part')} over
      </button>
    </>
  );
}
