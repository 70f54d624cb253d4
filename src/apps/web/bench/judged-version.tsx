import { judgeAgain } from '../actions/judge-again.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { useUnit } from './unit-context.ts';

/** With which version of its model a unit is judged, and the way to the newest; nothing for a model of the folder. */
export function JudgedVersion() {
  const { row, model } = useUnit().file;
  const { record, busy } = useRecorder();
  const { version, newest_version: newest } = model;
  if (version === null) return null;
  return (
    <>
      <span>by version {version}</span>
      {newest !== null && newest !== version && (
        <button type="button" className="quiet" disabled={busy} onClick={() => void record(judgeAgain(row.id, model.id))}>
          Judge by version {newest}
        </button>
      )}
    </>
  );
}
