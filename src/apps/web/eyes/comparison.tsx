import { useComparison } from '../api/comparisons.ts';
import { Section } from '../ui/section.tsx';
import { Trouble } from '../ui/answer.tsx';
import type { ComparisonView, PhotoQuestion } from '../../../bench/views/index.ts';
import { DifferencesDesk } from './differences-desk.tsx';

const STEPS: Readonly<Record<string, string>> = {
  decoding: 'Opening the photos',
  aligning: 'Looking for how one lies on the other',
  'laying-together': 'Laying one on the other',
  comparing: 'Comparing',
  judging: 'Judging what differs',
};

/** One comparison: how far it is, why it cannot be made, or what it found. */
export function Comparison({ question }: { readonly question: PhotoQuestion }) {
  const { view, error, again, stop } = useComparison(question);
  if (error) return <Trouble error={error} retry={again} />;
  if (view?.result) return <DifferencesDesk key={view.key} question={question} result={view.result} again={again} />;
  return (
    <Section id="comparing" title="Comparison">
      {view === undefined || view.stage === 'waiting' || view.stage === 'working' ? (
        <UnderWay view={view} stop={stop} />
      ) : (
        <Ended view={view} again={again} />
      )}
    </Section>
  );
}

function UnderWay({ view, stop }: { readonly view: ComparisonView | undefined; readonly stop: () => void }) {
  const words = view?.step ? STEPS[view.step] : 'Waiting for its turn';
  return (
    <>
      <output>{words} …</output>
      <progress value={view?.share ?? 0} max={1} aria-label="How far the comparison is" />
      <div className="row">
        <button type="button" disabled={view === undefined} onClick={stop}>
          Stop
        </button>
      </div>
    </>
  );
}

function Ended({ view, again }: { readonly view: ComparisonView; readonly again: () => void }) {
  return (
    <div className="trouble" role="alert">
      <p>{view.problem?.message ?? 'The comparison was stopped.'}</p>
      <button type="button" onClick={again}>
        Compare again
      </button>
    </div>
  );
}
