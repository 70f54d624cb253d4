import { putDemoAway } from '../actions/put-demo-away.ts';
import { useBench } from '../api/queries.ts';
import { useRecorder } from '../record/recorder-context.ts';

/** While the demo is there: says so, and puts it away at one tap. */
export function DemoBanner() {
  const bench = useBench();
  const { record, busy } = useRecorder();
  if (bench.data?.demo !== 'present') return null;
  return (
    <aside className="demo-banner" aria-label="Demo">
      <p>Demo: invented things to try out</p>
      <button type="button" disabled={busy} onClick={() => void record(putDemoAway())}>
        Put the demo away
      </button>
    </aside>
  );
}
