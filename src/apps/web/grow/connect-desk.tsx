import { useMemo, useState } from 'react';
import type { Gesture } from '../actions/gesture.ts';
import { joinPins } from '../actions/join-pins.ts';
import { netsOf, type Contradiction } from '../../../core/netting/index.ts';
import { hitAt } from '../board/drawn-part.ts';
import type { Frame, Place } from '../board/frame.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Chips } from '../ui/chips.tsx';
import { Section } from '../ui/section.tsx';
import type { BoardEditorProps } from './board-editor.tsx';
import { drawn, type Side } from './editor-part.ts';
import { EditorStage } from './editor-stage.tsx';
import { fromBody } from './marked-part.ts';
import { NetList } from './net-list.tsx';
import { NetsLayer } from './nets-layer.tsx';
import { PinsForm, type Measured } from './pins-form.tsx';
import { contradictionWords, pinAt, probed, shownNets, type Leads } from './probing.ts';

interface Question {
  readonly gesture: Gesture;
  readonly against: readonly Contradiction[];
}

const NO_SELECTION: ReadonlySet<string> = new Set();
const BEEPS = [
  { value: 'joined', label: 'It beeps: joined' },
  { value: 'apart', label: 'No beep: not joined' },
] as const;

/** What is joined to what, found with the meter on continuity: one lead is held on a pin, the other goes from pin to pin. */
export function ConnectDesk({ file, board, laid, marks }: BoardEditorProps) {
  const { record } = useRecorder();
  const [side, setSide] = useState<Side>('front');
  const [leads, setLeads] = useState<Leads>({ held: null, beeps: true });
  const [chosen, setChosen] = useState<string | null>(null);
  const [question, setQuestion] = useState<Question | null>(null);
  const nets = useMemo(() => netsOf(marks.joins, marks.names), [marks.joins, marks.names]);
  const listed = useMemo(() => shownNets(nets), [nets]);
  const parts = useMemo(() => marks.parts.map((part) => drawn(fromBody(part), (pin) => nets.nodeOf.get(pin) ?? null)), [marks.parts, nets]);
  const frame: Frame = { width: board.width_mm, height: board.height_mm, side };
  const other = side === 'front' ? 'back' : 'front';

  const note = (gesture: Gesture, against: readonly Contradiction[]): void => {
    if (against.length > 0) setQuestion({ gesture, against });
    else void record(gesture);
  };
  const measure = ({ join, against }: Measured): void => note(joinPins(file.id, join), against);
  const tap = (at: Place, reach: number): void => {
    const pin = pinAt(hitAt(parts, side, at, reach));
    if (pin === null || question) return;
    const said = probed(leads, pin, marks);
    if (said.what === 'held') setLeads(said.leads);
    else measure(said);
  };
  return (
    <Section
      id="connections"
      title="Connections"
      aside={
        <button type="button" onClick={() => setSide(other)}>
          Show the {other}
        </button>
      }
    >
      <p className="small">
        Power off, battery and charger out, capacitors discharged: the meter feeds the board itself. Set it to continuity. Tap the pin on
        which one lead stays, then each pin that you touch with the other.
      </p>
      <Chips
        legend="What the meter says"
        options={BEEPS}
        value={leads.beeps ? 'joined' : 'apart'}
        onChange={(value) => setLeads({ ...leads, beeps: value === 'joined' })}
      />
      <EditorStage
        frame={frame}
        laid={laid[side]}
        parts={parts}
        selected={NO_SELECTION}
        pending={null}
        title={`The ${side} of the board with ${listed.length} nets`}
        onTap={tap}
        onDrag={null}
        onNudge={null}
        onKey={({ key }) => {
          if (key !== 'Escape' || leads.held === null) return false;
          setLeads({ ...leads, held: null });
          return true;
        }}
      >
        {(scale) => <NetsLayer frame={frame} scale={scale} parts={parts} nets={listed} chosen={chosen} held={leads.held} />}
      </EditorStage>
      <output className="row">
        {leads.held === null ? 'No lead is held.' : `One lead is held on ${leads.held}.`}
        {leads.held !== null && (
          <button type="button" onClick={() => setLeads({ ...leads, held: null })}>
            Lift it
          </button>
        )}
      </output>
      {question && (
        <Doubt
          question={question}
          keep={() => {
            void record(question.gesture);
            setQuestion(null);
          }}
          leave={() => setQuestion(null)}
        />
      )}
      <PinsForm parts={parts} beeps={leads.beeps} found={marks} onMeasured={measure} />
      {nets.contradictions.length > 0 && (
        <section className="trouble" aria-label="What cannot be true at once">
          <ul>
            {nets.contradictions.map((each) => (
              <li key={`${each.code} ${each.pins.join(' ')}`}>{contradictionWords(each)}</li>
            ))}
          </ul>
        </section>
      )}
      <NetList modelId={file.id} nets={listed} chosen={chosen} choose={setChosen} found={marks} note={note} />
    </Section>
  );
}

/** Asked before something is recorded that contradicts what is known. */
function Doubt({
  question: { gesture, against },
  keep,
  leave,
}: {
  readonly question: Question;
  readonly keep: () => void;
  readonly leave: () => void;
}) {
  return (
    <section className="trouble" role="alert">
      {against.map((each) => (
        <p key={`${each.code} ${each.pins.join(' ')}`}>{contradictionWords(each)}</p>
      ))}
      <div className="row">
        <button type="button" onClick={leave}>
          Do not note it
        </button>
        <button type="button" onClick={keep}>
          Note it all the same: {gesture.said}
        </button>
      </div>
    </section>
  );
}
