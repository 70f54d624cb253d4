import type { ProbeView } from '../../../bench/views/index.ts';
import { leadWords } from './lead-words.ts';

/** Where the leads go, how the board is fed, and what to set first. */
export function ProbeGuide({ probe }: { readonly probe: ProbeView }) {
  return (
    <>
      {probe.red === null ? (
        <p>
          <b>The current of {probe.supply ?? 'the supply'}</b>, read at the supply itself.
        </p>
      ) : (
        <ul className="lead-words">
          <Lead lead="red" at={probe.red} />
          {probe.black && <Lead lead="black" at={probe.black} />}
        </ul>
      )}
      <p>
        <b>Power</b> {probe.power.name}
      </p>
      {probe.set.length > 0 && (
        <div>
          <h3 className="small">Set first</h3>
          <ol className="steps small">
            {probe.set.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ol>
        </div>
      )}
    </>
  );
}

function Lead({ lead, at }: { readonly lead: 'red' | 'black'; readonly at: NonNullable<ProbeView['red']> }) {
  const [first, ...others] = at.pads;
  return (
    <li>
      <span className={`lead-badge lead-badge-${lead}`}>{lead === 'red' ? 'Red' : 'Black'}</span>
      <span>
        <b>{at.name}</b>
        {first && ` at ${leadWords(first)}, ${first.side}`}
        {others.length > 0 && (
          <span className="small muted">
            {' '}
            or{' '}
            {others
              .slice(0, 3)
              .map((pad) => `${leadWords(pad)}${pad.side === first?.side ? '' : ` (${pad.side})`}`)
              .join(', ')}
          </span>
        )}
      </span>
    </li>
  );
}
