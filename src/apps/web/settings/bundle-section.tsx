import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import type { BenchView } from '../../../bench/views/index.ts';
import { postBundle } from '../api/post-bundle.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Section } from '../ui/section.tsx';

/** The whole bench as one file, out and in. */
export function BundleSection({ bench }: { readonly bench: BenchView }) {
  const client = useQueryClient();
  const { tell } = useRecorder();
  const [taking, setTaking] = useState(false);
  const take = async (file: File | undefined): Promise<void> => {
    if (file === undefined) return;
    setTaking(true);
    try {
      await postBundle(file);
      await client.invalidateQueries();
      tell('The bundle is in: this bench now holds all of it', 'plain');
    } catch (error) {
      tell(`Not taken in: ${sentenceOf(error)}`, 'bad');
    } finally {
      setTaking(false);
    }
  };
  return (
    <Section id="bundle" title="Bundle">
      <p>One file with the whole log ({counted(bench.events, 'event')}) and every photo: the way to another machine.</p>
      <div className="row">
        <a className="button" href="/api/bundle" download>
          Export the bundle
        </a>
        <label className="button file-button">
          Import a bundle
          <input
            type="file"
            className="sr-only"
            accept=".zip,application/zip"
            disabled={taking}
            onChange={(event) => {
              void take(event.target.files?.[0]);
              event.target.value = '';
            }}
          />
        </label>
        <output>{taking && 'Taking it in …'}</output>
      </div>
      <p className="small muted">Import needs an empty bench.</p>
    </Section>
  );
}
