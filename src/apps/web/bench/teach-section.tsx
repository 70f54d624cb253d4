import { teachReadings } from '../actions/teach-readings.ts';
import { counted } from '../format/number.ts';
import { reading } from '../format/reading.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { useUnit } from './unit-context.ts';

/** One tap, and the model knows what this good unit shows; nothing where it has nothing to teach. */
export function TeachSection() {
  const { teach, row, model } = useUnit().file;
  const { record, busy } = useRecorder();
  if (!teach || teach.readings.length === 0) return null;
  const board = { modelId: model.id, board: teach.board, revision: teach.revision, itemId: row.id };
  const button = (
    <button
      type="button"
      className={teach.is_proved ? 'main' : ''}
      disabled={busy}
      onClick={() => void record(teachReadings(board, teach.readings))}
    >
      Teach {counted(teach.readings.length, 'reading')} as known-good
    </button>
  );
  return (
    <Section id="teach" title="Known-good readings">
      <p>
        {teach.is_proved ? 'It is proved, so what it shows is what a good one shows: ' : 'Measured since the last work: '}
        {teach.readings.map(({ name, value, mode }) => `${name} ${reading(value, mode)}`).join(', ')}.
      </p>
      {teach.is_proved ? button : <Fold title="It is not proved yet, but I know that its board is good">{button}</Fold>}
    </Section>
  );
}
