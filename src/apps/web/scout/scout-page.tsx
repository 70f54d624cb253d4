import { useBench, useModels } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { CompareSection } from './compare-section.tsx';
import { ScoutDesk } from './scout-desk.tsx';
import { WatchSection } from './watch-section.tsx';

/** Should I buy it: claims in, outlook out. */
export default function ScoutPage() {
  const bench = useBench();
  const models = useModels();
  useTitle('Scout');
  return (
    <>
      <header className="page-head">
        <h1>Scout</h1>
        <p className="lead">What a listing says, turned into the price above which it loses.</p>
      </header>
      <Answer query={bench}>
        {(settings) => (
          <Answer query={models}>
            {(rows) => (
              <>
                <ScoutDesk bench={settings} models={rows} />
                <CompareSection bench={settings} models={rows} />
              </>
            )}
          </Answer>
        )}
      </Answer>
      <WatchSection />
    </>
  );
}
