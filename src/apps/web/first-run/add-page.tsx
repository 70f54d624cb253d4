import { useBench } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { FirstRun } from './first-run.tsx';

/** Another unit, added as the first one was. */
export function AddPage() {
  const bench = useBench();
  return <Answer query={bench}>{(view) => <FirstRun bench={view} />}</Answer>;
}
