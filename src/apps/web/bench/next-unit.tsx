import { Link } from 'wouter';
import { usePile } from '../api/queries.ts';
import { StockTag } from '../ui/stock-tag.tsx';
import { useUnit } from './unit-context.ts';

/** Where to go from a unit that needs nothing: the first other unit of the plan. */
export function NextUnit() {
  const { file } = useUnit();
  const pile = usePile();
  const next = pile.data?.plan.find((line) => line.row.id !== file.row.id);
  if (next === undefined)
    return (
      <p>
        <Link href="/pile">To the pile</Link>
      </p>
    );
  return (
    <p>
      Go on with{' '}
      <Link href={`/bench/${encodeURIComponent(next.row.id)}`}>
        <StockTag number={next.row.number} /> {next.row.name}
      </Link>
      : {next.headline}
    </p>
  );
}
