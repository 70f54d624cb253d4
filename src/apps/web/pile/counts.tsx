import type { PileView } from '../../../bench/views/index.ts';
import { STATUS_WORDS, STATUSES } from '../format/words.ts';

/** How many things are where in their life. */
export function Counts({ counts }: { readonly counts: PileView['counts'] }) {
  const shown = STATUSES.filter((status) => (counts[status] ?? 0) > 0);
  if (shown.length === 0) return null;
  return (
    <dl className="counts">
      {shown.map((status) => (
        <div key={status}>
          <dt>{STATUS_WORDS[status]}</dt>
          <dd>{counts[status]}</dd>
        </div>
      ))}
    </dl>
  );
}
