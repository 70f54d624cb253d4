import type { BeliefView } from '../../../bench/views/index.ts';
import { counted } from '../format/number.ts';
import { Bar } from '../ui/bar.tsx';
import { groupOf, hypothesisKey, hypothesisWords } from './hypothesis-words.ts';
import { useBefore } from './use-before.ts';

type Hypothesis = BeliefView['hypotheses'][number];

/** Faults, alone or together, as bars, likeliest first; those that no check tells apart are one bar that unfolds. Each shows where it stood before the last reading. */
export function FaultBars({ belief }: { readonly belief: BeliefView }) {
  const chances = new Map(belief.hypotheses.map((each) => [hypothesisKey(each), each.chance]));
  const before = useBefore(belief.moved?.event_id ?? null, chances);
  return (
    <ul className="plain-list fault-bars">
      {belief.hypotheses.map((each) => {
        const key = hypothesisKey(each);
        return (
          <li key={key}>
            <FaultBar hypothesis={each} groups={belief.groups} before={before.get(key) ?? told(belief, each)} />
          </li>
        );
      })}
    </ul>
  );
}

/** Where a single fault stood before, as the bench tells it. */
const told = ({ moved }: BeliefView, { faults, alike }: Hypothesis): number | undefined =>
  alike.length === 0 && faults.length === 1 ? moved?.faults.find(({ id }) => id === faults[0]!.id)?.before : undefined;

interface FaultBarProps {
  readonly hypothesis: Hypothesis;
  readonly groups: BeliefView['groups'];
  readonly before: number | undefined;
}

function FaultBar({ hypothesis, groups, before }: FaultBarProps) {
  const { alike, chance } = hypothesis;
  const words = hypothesisWords(hypothesis);
  const mark = before === undefined ? {} : { before };
  if (alike.length === 0) return <Bar label={words} value={chance} {...mark} />;
  const remedy = groupOf(groups, hypothesis)?.remedy;
  const label = (
    <>
      {words} <span className="small muted">or {counted(alike.length, 'other', 'others')} alike</span>
    </>
  );
  return (
    <details className="alike">
      <summary>
        <Bar label={label} value={chance} {...mark} />
      </summary>
      <div className="alike-body">
        <p>No check tells these apart; the bar is for all of them together.</p>
        <ul>
          {alike.map((fault) => (
            <li key={fault.id}>{fault.name}</li>
          ))}
        </ul>
        <p>{remedy ? <b>One remedy serves all: {remedy.name}.</b> : 'No single remedy serves all of them.'}</p>
      </div>
    </details>
  );
}
