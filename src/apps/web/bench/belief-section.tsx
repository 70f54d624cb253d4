import type { BeliefView } from '../../../bench/views/index.ts';
import { chance } from '../format/number.ts';
import { Bar } from '../ui/bar.tsx';
import { Section } from '../ui/section.tsx';
import { useUnit } from './unit-context.ts';

const SHOWN_BLOCKS = 8;

/** What is believed to be wrong, block by block, and what the last evidence moved. */
export function BeliefSection() {
  const { belief, row } = useUnit().file;
  if (row.kind !== 'unit' || belief.blocks.length === 0) return null;
  const blocks = belief.blocks.toSorted((a, b) => b.chance - a.chance);
  return (
    <Section id="belief" title="What may be wrong" aside="Mark: before the last evidence">
      <p className="sr-only" aria-live="polite">
        {movedSentence(belief.blocks)}
      </p>
      <div>
        {blocks.slice(0, SHOWN_BLOCKS).map((block) => (
          <Bar key={block.id} label={block.name} value={block.chance} before={block.before} />
        ))}
        <Bar label="Not in the model" value={belief.unknown} />
        <Bar label="Nothing wrong" value={belief.none} />
      </div>
      {blocks.length > SHOWN_BLOCKS && (
        <details className="why">
          <summary>The other {blocks.length - SHOWN_BLOCKS} blocks</summary>
          {blocks.slice(SHOWN_BLOCKS).map((block) => (
            <Bar key={block.id} label={block.name} value={block.chance} before={block.before} />
          ))}
        </details>
      )}
      <OddEvidence odd={belief.odd} />
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

/** "Display cable worn and battery flat", "Something that is not in the model", "Nothing wrong". */
export function hypothesisWords(each: BeliefView['hypotheses'][number]): string {
  const names = each.faults.map((fault) => fault.name);
  if (each.unknown) names.push('something that is not in the model');
  const words = names.length === 0 ? 'nothing wrong' : names.join(' and ');
  return words.charAt(0).toUpperCase() + words.slice(1);
}

/** What moved most with the last evidence, for those who hear the page. */
export function movedSentence(blocks: BeliefView['blocks']): string {
  const moved = blocks.filter((block) => Math.abs(block.chance - block.before) >= 0.01);
  const [first] = moved.toSorted((a, b) => Math.abs(b.chance - b.before) - Math.abs(a.chance - a.before));
  if (first === undefined) return 'The last evidence moved no block.';
  return `The last evidence moved ${first.name} from ${chance(first.before)} to ${chance(first.chance)}.`;
}
