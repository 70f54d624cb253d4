import type { MeterMode } from '../../../bench/events/index.ts';
import { usePoints } from '../api/queries.ts';
import { MODE_WORDS } from '../format/words.ts';
import type { MeasuredPoint } from './measure-answer-form.tsx';
import { pointWords } from './point-words.ts';
import { useUnit } from './unit-context.ts';

interface OtherModeProps {
  readonly point: MeasuredPoint;
  /** The mode of what was typed. */
  readonly said: MeterMode;
  readonly busy: boolean;
  readonly clear: () => void;
  readonly note: (at: MeasuredPoint) => void;
}

/** The reading is of another mode than the point: was the meter set so, or the wrong thing typed? */
export function OtherMode({ point, said, busy, clear, note }: OtherModeProps) {
  const { file } = useUnit();
  const points = usePoints(file.model.id).data ?? [];
  const here = points.find(({ id }) => id === point.id);
  const others = points.filter(({ mode, red, black }) => mode === said && red !== null && red === here?.red && black === here.black);
  return (
    <fieldset className="row other-mode" aria-label="What did the meter show?">
      <button type="button" onClick={clear}>
        Measure in {MODE_WORDS[point.mode].toLowerCase()}
      </button>
      {others.slice(0, 2).map((other) => (
        <button key={other.id} type="button" disabled={busy} onClick={() => note(other)}>
          Note it as {pointWords(other)}
        </button>
      ))}
    </fieldset>
  );
}
