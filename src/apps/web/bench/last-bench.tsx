import { Link, Redirect } from 'wouter';
import { usePile } from '../api/queries.ts';
import { Answer } from '../ui/answer.tsx';
import { StockTag } from '../ui/stock-tag.tsx';
import { useTitle } from '../ui/use-title.ts';
import { lastUnit } from './last-unit.ts';

/** The unit that was worked on last; if there is none, a choice from the plan. */
export function LastBench() {
  const last = lastUnit();
  useTitle('Bench');
  const pile = usePile();
  if (last !== null) return <Redirect to={`/bench/${encodeURIComponent(last)}`} replace />;
  return (
    <>
      <h1>Which unit?</h1>
      <Answer query={pile}>
        {(view) =>
          view.plan.length === 0 ? (
            <p>
              Nothing is waiting. <Link href="/scout">Scout for something</Link>, or <Link href="/">add a unit</Link>.
            </p>
          ) : (
            <ul className="plain-list">
              {view.plan.map(({ row, headline }) => (
                <li key={row.id}>
                  <Link href={`/bench/${encodeURIComponent(row.id)}`}>
                    <StockTag number={row.number} /> {row.name}
                  </Link>{' '}
                  <span className="muted">{headline}</span>
                </li>
              ))}
            </ul>
          )
        }
      </Answer>
    </>
  );
}
