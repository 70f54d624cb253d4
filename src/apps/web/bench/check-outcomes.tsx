import type { CheckView } from '../../../bench/views/index.ts';
import { chance, counted } from '../format/number.ts';
import { reading } from '../format/reading.ts';
import { outcomeWords } from '../format/words.ts';

type Outcome = CheckView['outcomes'][number];

/** What may come out, how likely, and what each would mean and lead to; with a circuit at once in sight, for it tells what to do by the reading. */
export function CheckOutcomes({ outcomes, mode }: { readonly outcomes: readonly Outcome[]; readonly mode: string | null }) {
  const [told, rare] = parted(outcomes);
  const hasRanges = outcomes.some(({ range }) => range !== null);
  return (
    <details className="why" open={hasRanges}>
      <summary>What each outcome would mean</summary>
      <ul className="outcomes">
        {told.map((outcome) => (
          <li key={outcome.outcome}>
            <b>{rangeWords(outcome, mode)}</b> <span className="muted">({chance(outcome.chance)})</span>
            {outcome.leads_to !== '' && `: then ${outcome.leads_to}`}
            <span className="outcome-means">{outcome.means}</span>
          </li>
        ))}
        {rare.length > 0 && (
          <li className="muted">
            {counted(rare.length, 'other outcome')}, together {chance(rare.reduce((sum, each) => sum + each.chance, 0))}: would say little
            for sure
          </li>
        )}
      </ul>
    </details>
  );
}

/** So seldom, a range of readings is not told by itself. */
const SELDOM = 0.015;

/** What is told one by one, and what is only counted; an outcome without a range is always told. */
function parted(outcomes: readonly Outcome[]): [told: Outcome[], rare: Outcome[]] {
  const isRare = ({ range, chance: likely }: Outcome): boolean => range !== null && likely < SELDOM;
  return [outcomes.filter((each) => !isRare(each)), outcomes.filter(isRare)];
}

/** "2.9 V to 3.4 V", "Below 0.2 V", "OL"; an outcome without a range by its name. */
export function rangeWords({ range, outcome }: Pick<Outcome, 'range' | 'outcome'>, mode: string | null): string {
  if (range === null || mode === null) return outcomeWords(outcome);
  if (range.ol) return 'OL';
  const [from, to] = [range.from, range.to].map((value) => (value === null ? null : reading(Number(value.toPrecision(3)), mode)));
  if (from && to) return range.from === 0 ? `Below ${to}` : `${from} to ${to}`;
  return from ? (range.from === 0 ? 'Any number' : `Above ${from}`) : to ? `Below ${to}` : 'Any number';
}
