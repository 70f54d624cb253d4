import { Link } from 'wouter';
import { usePile } from '../api/queries.ts';
import { PlanSection } from '../plan/plan-section.tsx';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { AllItems } from './all-items.tsx';
import { Counts } from './counts.tsx';

/** Everything owned and unfinished, and what to do with it. */
export function PilePage() {
  const pile = usePile();
  useTitle('Pile');
  return (
    <>
      <header className="page-head row-apart">
        <h1>Pile</h1>
        <div className="row">
          <Link href="/scout" className="button">
            Scout a listing
          </Link>
          <Link href="/add" className="button">
            Add a unit
          </Link>
        </div>
      </header>
      <Answer query={pile}>
        {(view) => (
          <>
            <Counts counts={view.counts} />
            <PlanSection pile={view} />
          </>
        )}
      </Answer>
      <AllItems />
    </>
  );
}
