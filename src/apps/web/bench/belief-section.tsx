import type { BeliefView } from '../../../bench/views/index.ts';
import { chance } from '../format/number.ts';
import { Bar } from '../ui/bar.tsx';
import { Section } from '../ui/section.tsx';
import { BlockBars } from './block-bars.tsx';
import { FaultBars } from './fault-bars.tsx';
import { hypothesisWords } from './hypothesis-words.ts';
import { MeasureAgain } from './measure-again.tsx';
import { Moved } from './moved.tsx';
import { useUnit } from './unit-context.ts';

/** What is believed to be wrong: fault by fault where the circuit is known, else block by block, and what the last evidence moved. */
export function BeliefSection() {
  const { belief, row } = useUnit().file;
  if (row.kind !== 'unit' || belief.blocks.length === 0) return null;
  return (
    <Section id="belief" title="What may be wrong" aside="Mark: before the last evidence">
      <p className="sr-only" aria-live="polite">
        {movedSentence(belief)}
      </p>
      {belief.repeat && <MeasureAgain key={belief.repeat.event_id} repeat={belief.repeat} />}
      <Moved moved={belief.moved} />
      {belief.knowledge ? (
        <>
          <FaultBars belief={belief} />
          <details className="why">
            <summary>The same by blocks</summary>
            <BlockBars blocks={belief.blocks} />
          </details>
        </>
      ) : (
        <>
          <div>
            <BlockBars blocks={belief.blocks}>
              <Bar label="Not in the model" value={belief.unknown} />
              <Bar label="Nothing wrong" value={belief.none} />
            </BlockBars>
          </div>
          <details className="why">
            <summary>Which faults, alone or together</summary>
            <ol className="hypotheses">
              {belief.hypotheses.map((each) => (
                <li key={hypothesisWords(each)}>
                  {hypothesisWords(each)}: {chance(each.chance)}
                </li>
              ))}
            </ol>
          </details>
        </>
      )}
      <OddEvidence odd={belief.odd.filter(({ event_id: id }) => id !== belief.repeat?.event_id)} />
    </Section>
  );
}

function OddEvidence({ odd }: { readonly odd: BeliefView['odd'] }) {
  if (odd.length === 0) return null;
  return (
    <div className="odd" role="note">
      <h3>These do not fit the rest</h3>
      <ul>
        {odd.map((each) => (
          <li key={each.event_id}>{each.text}</li>
        ))}
      </ul>
      <p className="small">Check them again, or undo a slip in the log.</p>
    </div>
  );
}

/** What moved most with the last evidence, for those who hear the page. */
export function movedSentence({ blocks, moved }: Pick<BeliefView, 'blocks' | 'moved'>): string {
  const faults = (moved?.faults ?? []).map(({ name, before, chance: now }) => ({ name, before, chance: now }));
  const shifts = [...(faults.length > 0 ? faults : blocks)].filter((each) => Math.abs(each.chance - each.before) >= 0.01);
  const [first] = shifts.sort((a, b) => Math.abs(b.chance - b.before) - Math.abs(a.chance - a.before));
  if (first === undefined) return 'The last evidence moved nothing.';
  return `The last evidence moved ${first.name} from ${chance(first.before)} to ${chance(first.chance)}.`;
}
