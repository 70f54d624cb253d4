import { useState } from 'react';
import { readShared } from '../../../bench/learning/read-shared.ts';
import { takeInLearned } from '../actions/take-in-learned.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { NumberField } from '../ui/number-field.tsx';

interface SharePartProps {
  /** Models of which something was learned. */
  readonly models: readonly { readonly id: string; readonly name: string }[];
}

/** Learned numbers as files: out, without money and names, and in, at a weight. */
export function SharePart({ models }: SharePartProps) {
  return (
    <>
      <Fold title="Give away what was learned">
        <p>
          A file holds rates, chances, minutes and readings of one model, from your own jobs. No price, no name, no day and no photo is in
          it. It is plain text: look at it before you give it away.
        </p>
        {models.length === 0 && <p className="muted">Nothing was learned yet.</p>}
        <p className="row">
          {models.map(({ id, name }) => (
            <a key={id} className="button" href={`/api/models/${encodeURIComponent(id)}/learned`} download={`learned-${id}.json`}>
              Save what was learned of {name}
            </a>
          ))}
        </p>
      </Fold>
      <Fold title="Take in what another bench has learned">
        <TakeInForm />
      </Fold>
    </>
  );
}

function TakeInForm() {
  const { record, tell, busy } = useRecorder();
  const [from, setFrom] = useState('');
  const [percent, setPercent] = useState(50);
  const [file, setFile] = useState<File | null>(null);
  const take = async (chosen: File): Promise<void> => {
    const read = readShared(await chosen.text(), from.trim() || chosen.name, percent / 100);
    if (!read.ok) return tell(`Not taken in: ${read.detail}. Ask for a new file.`, 'bad');
    await record(takeInLearned(read.body));
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (file) void take(file);
      }}
    >
      <Field label="The file">
        <input type="file" accept=".json,application/json" required onChange={(event) => setFile(event.target.files?.[0] ?? null)} />
      </Field>
      <Field label="Your name for where it comes from" hint="The name of the file unless you write one">
        <input value={from} maxLength={200} onChange={(event) => setFrom(event.target.value)} />
      </Field>
      <NumberField label="A job of theirs counts as so many per cent of yours" value={percent} min={1} max={100} onChange={setPercent} />
      <button type="submit" className="main" disabled={busy || file === null}>
        Take it in
      </button>
      <p className="small muted">It shows among the jobs behind each number, fades like them, and can be undone in the log.</p>
    </form>
  );
}
