import { useState } from 'react';
import type { PooledPointView } from '../../../bench/views/index.ts';
import { teachReadings } from '../actions/teach-readings.ts';
import { readMeter } from '../bench/read-meter.ts';
import { reading } from '../format/reading.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';

interface TeachFormProps {
  readonly modelId: string;
  readonly points: readonly PooledPointView[];
}

/** One reading of a board that is known to be good; goes on to the next point by itself. */
export function TeachForm({ modelId, points }: TeachFormProps) {
  const { record, busy } = useRecorder();
  const [board, setBoard] = useState('good-1');
  const [revision, setRevision] = useState('');
  const [chosen, setChosen] = useState(points[0]!.point);
  const [text, setText] = useState('');
  const point = points.find((each) => each.point === chosen) ?? points[0]!;
  const typed = text.trim() === '' ? null : readMeter(text, point.mode);
  const next = (): string => points[(points.indexOf(point) + 1) % points.length]!.point;
  const teach = async (value: number | null): Promise<void> => {
    const taught = teachReadings({ modelId, board: board.trim(), revision }, [{ point: point.point, mode: point.mode, value }]);
    if (!(await record(taught))) return;
    setText('');
    setChosen(next());
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        if (typed?.ok) void teach(typed.value);
      }}
    >
      <div className="fields">
        <Field label="The board" hint="Any name, the same for all readings of it">
          <input value={board} required maxLength={60} pattern=".*\S.*" onChange={(event) => setBoard(event.target.value)} />
        </Field>
        <Field label="Its revision" hint="As printed on it, if it is">
          <input value={revision} maxLength={60} onChange={(event) => setRevision(event.target.value)} />
        </Field>
        <Pick label="Point" options={points.map(({ point: id, name }) => ({ id, name }))} value={point.point} onChange={setChosen} />
        <Field
          label={`The meter shows (${point.mode})`}
          hint={typed === null ? 'Such as 3.28, 4k7 or OL' : typed.ok ? `= ${reading(typed.value, point.mode)}` : typed.message}
        >
          <input
            value={text}
            required
            autoComplete="off"
            aria-invalid={typed?.ok === false}
            onChange={(event) => setText(event.target.value)}
          />
        </Field>
      </div>
      <button type="submit" disabled={busy || typed?.ok !== true}>
        Teach this reading
      </button>
    </form>
  );
}
