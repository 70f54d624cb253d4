import { useMemo, useState } from 'react';
import { teachReadings, type TaughtBoard } from '../actions/teach-readings.ts';
import { useModel } from '../api/queries.ts';
import { MeterField } from '../bench/meter-field.tsx';
import { NumberPad } from '../bench/number-pad.tsx';
import { pointWords } from '../bench/point-words.ts';
import { POWER_WORDS } from '../bench/power-words.ts';
import { readMeter } from '../bench/read-meter.ts';
import type { Frame } from '../board/frame.ts';
import { LeadsLayer, type LeadMark } from '../board/marks-layer.tsx';
import { useRecorder } from '../record/recorder-context.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Field } from '../ui/field.tsx';
import { Section } from '../ui/section.tsx';
import type { BoardEditorProps } from './board-editor.tsx';
import { drawn } from './editor-part.ts';
import { EditorStage } from './editor-stage.tsx';
import { LoosePoints } from './loose-points.tsx';
import { fromBody } from './marked-part.ts';
import { AT_FIRST, changesTo, nextBoard, stopsOf, walkOrder, type WalkStance, type WalkStop } from './reading-walk.ts';

const NO_SELECTION: ReadonlySet<string> = new Set();

/** A guided walk over the points of a known-good board, in the order of the least effort; each reading is stored at once. */
export function WalkDesk(props: BoardEditorProps) {
  const { file, marks } = props;
  const readings = useModel(file.id).data?.readings ?? [];
  const parts = useMemo(() => marks.parts.map(fromBody), [marks.parts]);
  const [board, setBoard] = useState(() => nextBoard(readings));
  const [revision, setRevision] = useState('');
  const [stance, setStance] = useState<WalkStance>(AT_FIRST);
  const [passed, setPassed] = useState<ReadonlySet<string>>(new Set());
  const done = readings.filter((reading) => reading.board === board.trim()).map(({ point }) => point);
  const left = stopsOf(file, parts).filter(({ id }) => !done.includes(id) && !passed.has(id));
  const leftKey = left.map(({ id }) => id).join(' ');
  // oxlint-disable-next-line react-hooks/exhaustive-deps -- the order changes with the points that are left and how all stands, not with every answer
  const order = useMemo(() => walkOrder(left, stance), [leftKey, stance]);
  const next = order[0];
  return (
    <Section id="walk" title="Known-good readings" aside={`${done.length} of ${file.points.length} points`}>
      <div className="fields">
        <Field label="The board" hint="Any name, the same for all readings of it">
          <input value={board} maxLength={60} onChange={(event) => setBoard(event.target.value)} />
        </Field>
        <Field label="Its revision" hint="As printed on it, if it is">
          <input value={revision} maxLength={60} onChange={(event) => setRevision(event.target.value)} />
        </Field>
      </div>
      <LoosePoints file={file} parts={parts} />
      {next && board.trim() !== '' ? (
        <Stop
          {...props}
          key={next.id}
          stop={next}
          stance={stance}
          good={{ modelId: file.id, board: board.trim(), revision }}
          pass={() => setPassed(new Set([...passed, next.id]))}
          measured={() => setStance(next)}
        />
      ) : (
        <p className="muted">
          {file.points.length === 0 ? 'The model has no points yet: mark test points first.' : 'All points of this board are done.'}
        </p>
      )}
      {order.length > 1 && (
        <p className="small muted">
          Then:{' '}
          {order
            .slice(1, 6)
            .map(({ name }) => name)
            .join(', ')}
          .
        </p>
      )}
      {passed.size > 0 && (
        <button type="button" onClick={() => setPassed(new Set())}>
          Come back to the {passed.size} left out
        </button>
      )}
    </Section>
  );
}

interface StopProps extends BoardEditorProps {
  readonly stop: WalkStop;
  readonly stance: WalkStance;
  readonly good: TaughtBoard;
  readonly pass: () => void;
  readonly measured: () => void;
}

/** One point: what to change first, where the probe goes, and what the meter shows. */
function Stop({ board, laid, marks, stop, stance, good, pass, measured }: StopProps) {
  const { record, busy } = useRecorder();
  const [text, setText] = useState('');
  const typed = text.trim() === '' ? null : readMeter(text, stop.mode);
  const frame: Frame = { width: board.width_mm, height: board.height_mm, side: stop.side };
  const parts = useMemo(() => marks.parts.map((part) => drawn(fromBody(part))), [marks.parts]);
  const leads: LeadMark[] = stop.at ? [{ lead: 'red', text: stop.name, at: stop.at, side: stop.side }] : [];
  const changes = changesTo(stance, stop);
  const teach = async (value: number | null): Promise<void> => {
    if (await record(teachReadings(good, [{ point: stop.id, mode: stop.mode, value }]))) measured();
  };
  return (
    <>
      <h3>{pointWords({ ...stop, power: { name: POWER_WORDS[stop.power] } })}</h3>
      {changes.length > 0 && (
        <ul className="walk-changes">
          {changes.map((change) => (
            <li key={change}>{change}</li>
          ))}
        </ul>
      )}
      <Cautions cautions={stop.cautions} />
      <EditorStage
        frame={frame}
        laid={laid[stop.side]}
        parts={parts}
        selected={NO_SELECTION}
        pending={null}
        title={
          stop.at
            ? `The ${stop.side} of the board with a ring at ${stop.name}`
            : `The ${stop.side} of the board; where ${stop.name} is was not marked`
        }
        onTap={null}
        onDrag={null}
        onNudge={null}
        onKey={() => false}
      >
        {(scale) => <LeadsLayer frame={frame} scale={scale} leads={leads} />}
      </EditorStage>
      <form
        className="form"
        onSubmit={(event) => {
          event.preventDefault();
          if (typed?.ok) void teach(typed.value);
        }}
      >
        <MeterField label={`What the meter shows at ${stop.name}`} mode={stop.mode} text={text} onChange={setText} typed={typed} />
        <NumberPad mode={stop.mode} text={text} onChange={setText} />
        <div className="row">
          <button type="submit" className="main" disabled={busy || typed?.ok !== true}>
            Note it and go on
          </button>
          <button type="button" onClick={pass}>
            Leave this one out
          </button>
        </div>
      </form>
    </>
  );
}
