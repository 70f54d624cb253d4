import { Link } from 'wouter';
import type { ModelFile } from '../../../bench/models/index.ts';
import { undo } from '../actions/undo.ts';
import { counted } from '../format/number.ts';
import { dayAndTime } from '../format/when.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { FromWhere } from './from-where.tsx';
import { useGrown } from './growth-context.ts';

/** What a model inherits, and how far it has grown beyond that. */
export function GrowthHead({ blocks }: Pick<ModelFile, 'blocks'>) {
  const grown = useGrown();
  if (!grown) return null;
  const { from, version, places, readings, parts, taken, left_out: leftOut, circuit_problems: troubles } = grown.growth;
  const boards = new Set(readings.map(({ board }) => board)).size;
  return (
    <Section id="growth" title="How it grew" aside={`version ${version}`}>
      <p>
        It inherits {from.kind === 'answers' ? `${from.name}, as six answers left it` : from.name}. Told since then:{' '}
        {counted(places.length, 'place')}, {counted(parts.length, 'part')} on the picture, {counted(readings.length, 'reading')} of{' '}
        {counted(boards, 'known-good board')}. Each place below says whether it is inherited, typed or measured.
      </p>
      <p>
        <Link href={`/models/${encodeURIComponent(grown.growth.model_id)}/board`}>
          Picture of its board: mark parts, probe connections, measure a good one
        </Link>
        {' · '}
        <Link href={`/models/${encodeURIComponent(grown.growth.model_id)}/opening`}>Record how it opens</Link>
      </p>
      {taken.map(({ author, licence, facts, at, event_id: id }) => (
        <p key={id} className="small">
          {counted(facts, 'fact')} by {author}
          {licence !== '' && `, under ${licence}`}, taken in {dayAndTime(at)}.
        </p>
      ))}
      {leftOut.length > 0 && (
        <div className="notice" role="note">
          <p>These do not hold together with the rest any more, and are left out:</p>
          <ul>
            {leftOut.map(({ place, why, event_id: id }) => (
              <LeftOut key={id} place={place} why={why} eventId={id} />
            ))}
          </ul>
        </div>
      )}
      <Fold title={`Its ${counted(blocks.length, 'block')}`}>
        <ul className="plain-list">
          {blocks.map(({ id, name }) => (
            <li key={id}>
              {name} <FromWhere section="blocks" id={id} />
            </li>
          ))}
        </ul>
      </Fold>
      {troubles.length > 0 && (
        <Fold title="Why its netlist makes no circuit yet">
          <ul>
            {troubles.map((trouble) => (
              <li key={trouble}>{trouble}</li>
            ))}
          </ul>
        </Fold>
      )}
    </Section>
  );
}

function LeftOut({ place, why, eventId }: { readonly place: string; readonly why: string; readonly eventId: string }) {
  const { record, busy } = useRecorder();
  return (
    <li>
      {place}: {why}.{' '}
      <button
        type="button"
        className="quiet"
        disabled={busy}
        aria-label={`Take ${place} back`}
        onClick={() => void record(undo([eventId]))}
      >
        Take it back
      </button>
    </li>
  );
}

/** Begins another model from this one. */
export const CopyLink = ({ id }: { readonly id: string }) => (
  <Link href={`/models/new?copy=${encodeURIComponent(id)}`}>Begin a model as a copy of it</Link>
);
