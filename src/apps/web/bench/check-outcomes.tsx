import type { CheckView } from '../../../bench/views/index.ts';
import { chance } from '../format/number.ts';
import { reading } from '../format/reading.ts';
import { outcomeWords } from '../format/words.ts';

type Outcome = CheckView['outcomes'][number];

/** What may come out, how likely, and what each would mean and lead to; with a circuit at once in sight, for it tells what to do by the reading. */
export function CheckOutcomes({ outcomes, mode }: { readonly outcomes: readonly Outcome[]; readonly mode: string | null }) {
  const hasRanges = outcomes.some(({ range }) => range !== null);
  return (
    <details className="why" open={hasRanges}>
      <summary>What each outcome would mean</summary>
      <ul className="outcomes">
        {outcomes.map((outcome) => (
          <li key={outcome.outcome}>
            <b>{rangeWords(outcome, mode)}</b> <span className="muted">({chance(outcome.chance)})</span>
            {outcome.leads_to !== '' && (
              <>
                : then <b className="leads-to">{outcome.leads_to}</b>
              </>
            )}
            <span className="outcome-means">{outcome.means}</span>
          </li>
        ))}
      </ul>
    </details>
  );
}

/** "2.9 V to 3.4 V", "Below 0.2 V", "OL"; an outcome without a range by its name. */
export function rangeWords({ range, outcome }: Pick<Outcome, 'range' | 'outcome'>, mode: string | null): string {
  if (range === null || mode === null) return outcomeWords(outcome);
  if (range.ol) return 'OL';
  const [from, to] = [range.from, range.to].map((value) => (value === null ? null : reading(value, mode)));
  if (from && to) return range.from === 0 ? `Below ${to}` : `${from} to ${to}`;
  return from ? (range.from === 0 ? 'Any number' : `Above ${from}`) : to ? `Below ${to}` : 'Any number';
}
