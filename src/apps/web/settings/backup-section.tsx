import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { makeBackup, planBackups, tryBackup, useBackups, type BackupsView, type TriedBackup } from '../api/backups.ts';
import { sentenceOf } from '../api/problem-error.ts';
import { counted } from '../format/number.ts';
import { dayAndTime } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { Field } from '../ui/field.tsx';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';

/** Copies for safety: making one, where they go, and the proof that one can be brought back. */
export function BackupSection() {
  const backups = useBackups();
  return (
    <Section id="backup" title="Backup">
      <Answer query={backups}>{(view) => <Backups key={`${String(view.folder)} ${String(view.nightly)}`} view={view} />}</Answer>
    </Section>
  );
}

/** Runs one request at a time, tells how it ended, and asks for the list anew. */
function useWork(): { readonly working: boolean; readonly run: <T>(work: () => Promise<T>, said: (done: T) => string) => Promise<void> } {
  const client = useQueryClient();
  const { tell } = useRecorder();
  const [working, setWorking] = useState(false);
  const run = async <T,>(work: () => Promise<T>, said: (done: T) => string): Promise<void> => {
    setWorking(true);
    try {
      tell(said(await work()), 'plain');
    } catch (error) {
      tell(sentenceOf(error), 'bad');
    } finally {
      setWorking(false);
      await client.invalidateQueries({ queryKey: ['backups'] });
    }
  };
  return { working, run };
}

const holds = ({ events, photos, digest }: TriedBackup): string =>
  `It opens to the same bench: ${counted(events, 'event')}, ${counted(photos, 'photo')}, hash ${digest.slice(0, 12)}`;

function Backups({ view }: { readonly view: BackupsView }) {
  const { working, run } = useWork();
  const newest = view.backups[0];
  return (
    <>
      {view.trouble !== null && <p role="alert">{view.trouble.message}</p>}
      <p>
        {newest ? `The newest is from ${dayAndTime(newest.made_at)}, with ${counted(newest.events, 'event')}. ` : 'There is none yet. '}
        They go into <code>{view.used_folder}</code>
        {view.nightly ? ', one each night in which something is new' : ', only when you make one'}.
        {view.folder === null && ' That is the same disk as the bench: choose a folder on another one.'}
      </p>
      <div className="row">
        <button
          type="button"
          className="main"
          disabled={working}
          onClick={() => void run(makeBackup, ({ tried }) => `Backup made. ${holds(tried)}`)}
        >
          Make a backup now
        </button>
        <output>{working && 'Working on it …'}</output>
      </div>
      <PlanForm
        view={view}
        disabled={working}
        save={(plan) =>
          void run(
            () => planBackups(plan),
            () => 'Backups go there from now on',
          )
        }
      />
      {view.backups.length > 0 && (
        <Fold title={`${counted(view.backups.length, 'backup')} to bring back`}>
          <p className="small muted">
            Trying one opens it as bringing it back would, checks every photo, and reckons the bench anew. Old ones go by themselves: a week
            of nights, five weeks and twelve months are kept.
          </p>
          <ul className="plain-list">
            {view.backups.map(({ name, made_at, events }) => (
              <li key={name} className="row">
                <span>
                  {dayAndTime(made_at)}, {counted(events, 'event')}
                </span>
                <button
                  type="button"
                  disabled={working}
                  aria-label={`Try it: the backup of ${dayAndTime(made_at)}`}
                  onClick={() => void run(() => tryBackup(name), holds)}
                >
                  Try it
                </button>
              </li>
            ))}
          </ul>
        </Fold>
      )}
    </>
  );
}

interface PlanFormProps {
  readonly view: BackupsView;
  readonly disabled: boolean;
  readonly save: (plan: Pick<BackupsView, 'folder' | 'nightly'>) => void;
}

function PlanForm({ view, disabled, save }: PlanFormProps) {
  const [folder, setFolder] = useState(view.folder ?? '');
  const [nightly, setNightly] = useState(view.nightly);
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        save({ folder: folder.trim() === '' ? null : folder.trim(), nightly });
      }}
    >
      <div className="fields">
        <Field label="Folder of the backups" hint="Whole path on the machine of the bench; empty for one inside the bench">
          <input value={folder} maxLength={1000} onChange={(event) => setFolder(event.target.value)} />
        </Field>
      </div>
      <label className="check-line">
        <input type="checkbox" checked={nightly} onChange={(event) => setNightly(event.target.checked)} />
        Make one each night
      </label>
      <div className="row">
        <button type="submit" disabled={disabled}>
          Save where backups go
        </button>
      </div>
    </form>
  );
}
