import { Redirect } from 'wouter';
import { useBench } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { FirstRun } from './first-run.tsx';

/** An empty bench begins with its first unit; any other with the pile. */
export function Home() {
  const bench = useBench();
  return <Answer query={bench}>{(view) => (view.items === 0 ? <FirstRun bench={view} /> : <Redirect to="/pile" replace />)}</Answer>;
}
