import { Link } from 'wouter';
import type { OpeningView } from '../../../bench/views/index.ts';

/** Nothing is left to do on this way: on to the work, or close it again; what still lies on the mat is said. */
export function ThereCard({ opening, close }: { readonly opening: OpeningView; readonly close: () => void }) {
  const isClosed = opening.back.length === 0;
  const onMat = opening.fasteners.sets.filter((set) => set.on_mat > 0);
  return (
    <section className="sheet next" aria-labelledby="there">
      <h2 className="headline" id="there" aria-live="polite">
        {isClosed ? 'It is closed' : 'You are there'}
      </h2>
      {isClosed && onMat.length > 0 && (
        <p role="alert">
          Still on the mat: {onMat.map(({ on_mat: count, name }) => `${count} of ${name}`).join(', ')}. What came out must go in.
        </p>
      )}
      <p className="row">
        <Link href={`/bench/${encodeURIComponent(opening.item_id)}`} className="button main">
          To the bench
        </Link>
        {!isClosed && (
          <button type="button" onClick={close}>
            Close it again
          </button>
        )}
      </p>
    </section>
  );
}
