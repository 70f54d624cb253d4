import { DIFFERENCE_WORDS } from '../../../bench/eyes/picture-words.ts';
import type { DifferenceView } from '../../../bench/views/index.ts';
import { chance } from '../format/number.ts';

interface DifferenceListProps {
  readonly shown: readonly DifferenceView[];
  readonly chosen: DifferenceView | null;
  readonly choose: (difference: DifferenceView) => void;
}

const VERDICTS = { real: 'really there', normal: 'normal', 'not-sure': 'not sure' } as const;

/** Differences in order, the likeliest first; one is chosen to be judged. */
export function DifferenceList({ shown, chosen, choose }: DifferenceListProps) {
  return (
    <ol className="eyes-list">
      {shown.map((difference) => (
        <li key={difference.rank}>
          <button type="button" aria-pressed={difference.rank === chosen?.rank} onClick={() => choose(difference)}>
            <span className="eyes-rank">{difference.rank}</span>
            <span>
              {difference.part && <strong>{difference.part}: </strong>}
              {DIFFERENCE_WORDS[difference.shows]}
            </span>
            <span className="small muted">{difference.verdict ? VERDICTS[difference.verdict] : `${chance(difference.chance)} real`}</span>
          </button>
        </li>
      ))}
    </ol>
  );
}
