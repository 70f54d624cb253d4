import type { PooledPointView } from '../../../bench/views/index.ts';
import { undo } from '../actions/undo.ts';
import { chance, counted } from '../format/number.ts';
import { reading } from '../format/reading.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { useGrown } from './growth-context.ts';
import { TeachForm } from './teach-form.tsx';

/** What known-good boards show at each point, from which boards, and where revisions differ. */
export function KnownGood() {
  const grown = useGrown();
  if (!grown) return null;
  const { points, growth } = grown;
  const differ = points.filter(({ differs }) => differs);
  return (
    <Section id="known-good" title="Known-good boards">
      {differ.length > 0 && (
        <p role="note">
          Revisions of the board differ at {differ.map(({ name }) => name).join(', ')}: teach each revision by itself, or begin a copy for
          one of them.
        </p>
      )}
      <div>
        {points.map((point) => (
          <PointFold key={point.point} point={point} />
        ))}
      </div>
      {points.length > 0 ? (
        <TeachForm modelId={growth.model_id} points={points} />
      ) : (
        <p className="muted">It has no points to measure yet: add one first.</p>
      )}
    </Section>
  );
}

function PointFold({ point }: { readonly point: PooledPointView }) {
  const { name, mode, boards, revisions, differs, same_chance: same } = point;
  return (
    <Fold
      title={
        <>
          {name} <span className="small muted">{shows(point)}</span>
        </>
      }
    >
      {boards.length === 0 ? (
        <p className="muted">No board was measured here yet.</p>
      ) : (
        <ul className="plain-list">
          {boards.map(({ board, revision, value }) => (
            <li key={board}>
              {board}
              {revision !== '' && `, ${revision}`}: {reading(value, mode)}
            </li>
          ))}
        </ul>
      )}
      {revisions.length > 1 && (
        <p>
          {revisions
            .map(({ revision, middle, boards: of }) => `${revision}: ${reading(middle, mode)} on ${counted(of.length, 'board')}`)
            .join('; ')}
          . {differs ? 'They differ' : 'No difference is shown'}: so much by itself comes about with a chance of {chance(same ?? 1)}.
        </p>
      )}
      <TaughtHere point={point.point} mode={mode} />
    </Fold>
  );
}

function shows({ middle, spread, mode, boards }: PooledPointView): string {
  if (boards.length === 0) return 'not measured yet';
  const over = `on ${counted(boards.length, 'board')}`;
  return middle === null ? `OL ${over}` : `${reading(middle, mode)} ± ${reading(spread, mode)} ${over}`;
}

/** Readings that were taught, each to be taken back. */
function TaughtHere({ point, mode }: { readonly point: string; readonly mode: string }) {
  const { record, busy } = useRecorder();
  const taught = useGrown()?.growth.readings.filter((each) => each.point === point && each.author === '') ?? [];
  if (taught.length === 0) return null;
  return (
    <ul className="plain-list small">
      {taught.map(({ board, value, event_id: id }) => (
        <li key={id}>
          {board}: {reading(value, mode)}{' '}
          <button
            type="button"
            className="quiet"
            disabled={busy}
            aria-label={`Take back: ${board}, ${reading(value, mode)}`}
            onClick={() => void record(undo([id]))}
          >
            Take it back
          </button>
        </li>
      ))}
    </ul>
  );
}
