import { useState } from 'react';
import type { ModelBundle } from '../../../bench/events/index.ts';
import { lookIntoBundle } from '../api/model-bundles.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { Field } from '../ui/field.tsx';
import { counted } from '../format/number.ts';

interface BundleFileProps {
  readonly bundle: ModelBundle | null;
  readonly onChange: (bundle: ModelBundle | null) => void;
}

/** The file of a model that another bench gave away, and what is in it. */
export function BundleFile({ bundle, onChange }: BundleFileProps) {
  const [trouble, setTrouble] = useState<string | null>(null);
  const look = async (file: File): Promise<void> => {
    setTrouble(null);
    try {
      onChange(await lookIntoBundle(file));
    } catch (error) {
      onChange(null);
      setTrouble(sentenceOf(error));
    }
  };
  return (
    <>
      <Field label="The bundle (.zip)">
        <input
          type="file"
          accept=".zip,application/zip"
          onChange={(event) => {
            const [file] = event.target.files ?? [];
            if (file) void look(file);
          }}
        />
      </Field>
      {trouble !== null && <p role="alert">{trouble}</p>}
      {bundle && (
        <p>
          {bundle.name} by {bundle.author}, {counted(bundle.facts.length, 'fact')}
          {bundle.licence !== '' && `, under ${bundle.licence}`}.
        </p>
      )}
    </>
  );
}
