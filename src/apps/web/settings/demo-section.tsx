import type { BenchView } from '../../../bench/views/index.ts';
import { putDemoAway } from '../actions/put-demo-away.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Section } from '../ui/section.tsx';

const WORDS = {
  none: 'This bench started without the demo.',
  present: 'The demo is here: invented units with invented sellers, to try everything out.',
  'put-away': 'The demo is put away. The log still holds it, but no list, sum or advice counts it.',
} as const;

/** Whether the demo is here, and the way to be rid of it. */
export function DemoSection({ bench }: { readonly bench: BenchView }) {
  const { record, busy } = useRecorder();
  return (
    <Section id="demo" title="Demo">
      <p>{WORDS[bench.demo]}</p>
      {bench.demo === 'present' && (
        <div className="row">
          <button type="button" disabled={busy} onClick={() => void record(putDemoAway())}>
            Put the demo away
          </button>
        </div>
      )}
    </Section>
  );
}
