import { useState } from 'react';
import { undo } from '../actions/undo.ts';
import { writeNote } from '../actions/write-note.ts';
import type { LogLine } from '../../../bench/views/index.ts';
import { photoUrl } from '../api/post-photos.ts';
import { dayAndTime } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Section } from '../ui/section.tsx';
import { useUnit } from './unit-context.ts';

const SHOWN_AT_FIRST = 12;

/** All that happened to this unit, the latest first; a slip is struck through, never gone. */
export function LogSection() {
  const { log } = useUnit().file;
  const [showsAll, setShowsAll] = useState(false);
  const lines = log.toSorted((a, b) => b.seq - a.seq);
  const shown = showsAll ? lines : lines.slice(0, SHOWN_AT_FIRST);
  return (
    <Section id="log" title="Log">
      <NoteForm />
      <ol className="log">
        {shown.map((line) => (
          <LogEntry key={line.event_id} line={line} />
        ))}
      </ol>
      {!showsAll && lines.length > SHOWN_AT_FIRST && (
        <button type="button" onClick={() => setShowsAll(true)}>
          Show the {lines.length - SHOWN_AT_FIRST} earlier lines
        </button>
      )}
    </Section>
  );
}

function LogEntry({ line }: { readonly line: LogLine }) {
  const { record, busy } = useRecorder();
  const canUndo = !line.corrected && !line.foreign && line.kind !== 'correction';
  return (
    <li className={line.corrected ? 'log-line corrected' : 'log-line'}>
      <div>
        {line.photo !== null && <img src={photoUrl(line.photo, 'thumb')} alt="" width="40" height="40" loading="lazy" />}
        {line.corrected ? (
          <>
            <s>{line.text}</s> <span className="small">(taken back)</span>
          </>
        ) : (
          <span>{line.text}</span>
        )}
        {line.foreign && <span className="small foreign">from a newer version, kept but not understood here</span>}
        <p className="small muted">
          <time dateTime={line.at}>{dayAndTime(line.at)}</time> · {line.device}
        </p>
      </div>
      {canUndo && (
        <button
          type="button"
          className="quiet"
          disabled={busy}
          aria-label={`Undo: ${line.text}`}
          onClick={() => void record(undo([line.event_id]))}
        >
          Undo
        </button>
      )}
    </li>
  );
}

function NoteForm() {
  const { file } = useUnit();
  const { record, busy } = useRecorder();
  const [text, setText] = useState('');
  const send = async (): Promise<void> => {
    if (await record(writeNote(file.row.id, text))) setText('');
  };
  return (
    <form
      className="note-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <Field label="Note">
        <input value={text} required onChange={(event) => setText(event.target.value)} />
      </Field>
      <button type="submit" disabled={busy}>
        Note it
      </button>
    </form>
  );
}
