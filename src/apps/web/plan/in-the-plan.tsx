import { Link } from 'wouter';
import { useLastPlan } from '../api/queries.ts';

/** Which of the two answers this is, and what the other one, the plan of the whole pile, says of a unit. */
export function InThePlan({ itemId }: { readonly itemId: string }) {
  const { data } = useLastPlan();
  if (!data || data.stage === 'off') return null;
  const planned = data.plan?.items.find(({ item_id }) => item_id === itemId);
  return (
    <p className="small">
      This weighs the unit alone.{' '}
      {planned ? (
        <>
          The <Link href="/pile">plan of the whole pile</Link>
          {data.stage === 'making' ? ', which is being made anew,' : ''} says: <b>{planned.headline}</b>.
        </>
      ) : (
        data.stage === 'making' && 'The plan of the whole pile is being made.'
      )}
    </p>
  );
}
