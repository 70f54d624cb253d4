import { Link } from 'wouter';
import { useModels } from '../api/queries.ts';
import type { BenchView } from '../../../bench/views/index.ts';
import { Answer } from '../ui/answer.tsx';
import { useTitle } from '../ui/use-title.ts';
import { AddUnitForm } from './add-unit-form.tsx';

/** From nothing to a first advice: one thing on the table, what was paid, what its seller says. */
export function FirstRun({ bench }: { readonly bench: BenchView }) {
  const models = useModels();
  const title = bench.items === 0 ? 'Add your first unit' : 'Add a unit';
  useTitle(title);
  return (
    <>
      <header className="page-head">
        <h1>{title}</h1>
        <p className="lead">
          Take {bench.items === 0 ? 'one broken thing' : 'the thing'} and say what you know. Salvor answers what to try first, why, and what
          it is worth to go on. Anything can be undone.
        </p>
      </header>
      <Answer query={models}>{(rows) => <AddUnitForm models={rows} bench={bench} />}</Answer>
      <p>
        Not bought it yet? <Link href="/scout">Scout first</Link>. A bench from another machine? <Link href="/settings">Bring it in</Link>.
      </p>
    </>
  );
}
