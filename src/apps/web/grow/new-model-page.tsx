import { Link, useSearchParams } from 'wouter';
import { useBench, useModels } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { NewModelForm } from './new-model-form.tsx';

/** A model for a device that nobody has modelled. */
export default function NewModelPage() {
  const [search] = useSearchParams();
  const models = useModels();
  const bench = useBench();
  useTitle('New model');
  return (
    <>
      <header className="page-head">
        <p className="small">
          <Link href="/models">All models</Link>
        </p>
        <h1>New model</h1>
        <p className="lead">
          A name and six answers are enough to begin with. It can be used on the Bench at once, and learns from all that you do there.
        </p>
      </header>
      <Answer query={models}>
        {(rows) => (
          <Answer query={bench}>{({ currency }) => <NewModelForm models={rows} currency={currency} copyOf={search.get('copy')} />}</Answer>
        )}
      </Answer>
    </>
  );
}
