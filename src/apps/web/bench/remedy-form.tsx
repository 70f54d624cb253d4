import { useState } from 'react';
import { Link } from 'wouter';
import { recordRemedy } from '../actions/record-remedy.ts';
import { takeParts } from '../actions/take-parts.ts';
import { useDrawer } from '../api/queries.ts';
import type { Body } from '../../../bench/events/index.ts';
import type { RemedyView } from '../../../bench/views/index.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Chips } from '../ui/chips.tsx';
import { Field } from '../ui/field.tsx';
import { MinutesField } from './minutes-field.tsx';
import { remedyStage } from './remedy-stage.ts';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

type RemedyOutcome = Body<'remedy-done'>['outcome'];
const OUTCOMES: readonly { readonly value: RemedyOutcome; readonly label: string }[] = [
  { value: 'not-tried-yet', label: 'Not tried yet' },
  { value: 'mended', label: 'Mended' },
  { value: 'not-mended', label: 'Not mended' },
  { value: 'made-worse', label: 'Made worse' },
];

/** The work is done: minutes, parts from the drawer, and what was seen right after. */
export function RemedyForm({
  remedy,
}: {
  readonly remedy: Pick<RemedyView, 'id' | 'name' | 'minutes' | 'parts'> & Partial<Pick<RemedyView, 'spots'>>;
}) {
  const unit = useUnit();
  const { file } = unit;
  const { record, busy } = useRecorder();
  const drawer = useDrawer();
  const [minutes, setMinutes] = useMinutes(remedy.minutes);
  const [outcome, setOutcome] = useState<RemedyOutcome>('not-tried-yet');
  const [left, setLeft] = useState<ReadonlySet<string>>(new Set());
  const [text, setText] = useState('');
  const needs = remedy.parts.filter((part) => !left.has(part.part));
  const stageNeeded = remedyStage(remedy, unit);
  const done = (): void =>
    void record(
      recordRemedy({
        itemId: file.row.id,
        remedy: remedy.id,
        remedyName: remedy.name,
        minutes,
        outcome,
        text,
        stage: file.stage,
        stageNeeded,
        parts: takeParts(file.row.id, needs, drawer.data?.bags ?? []),
      }),
    );
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        done();
      }}
    >
      {remedy.parts.length > 0 && (
        <fieldset className="chips">
          <legend>Parts</legend>
          {remedy.parts.map((part) => (
            <PartLine key={part.part} part={part} used={!left.has(part.part)} toggle={() => setLeft(toggled(left, part.part))} />
          ))}
        </fieldset>
      )}
      <Chips legend="Right after" options={OUTCOMES} value={outcome} onChange={setOutcome} />
      <div className="fields">
        <MinutesField value={minutes} onChange={setMinutes} />
        <Field label="Remark">
          <input value={text} onChange={(event) => setText(event.target.value)} />
        </Field>
      </div>
      <button type="submit" className="main" disabled={busy || drawer.isPending}>
        Done
      </button>
    </form>
  );
}

interface PartLineProps {
  readonly part: RemedyView['parts'][number];
  readonly used: boolean;
  readonly toggle: () => void;
}

function PartLine({ part, used, toggle }: PartLineProps) {
  if (part.in_drawer === 0)
    return (
      <p className="check-line">
        {part.count} × {part.name}: none in the drawer. <Link href="/drawer">Order or add some</Link>
      </p>
    );
  return (
    <label className="check-line">
      <input type="checkbox" checked={used} onChange={toggle} />
      {part.count} × {part.name} from the drawer, which holds {part.in_drawer}
    </label>
  );
}

function toggled(set: ReadonlySet<string>, value: string): ReadonlySet<string> {
  const next = new Set(set);
  if (!next.delete(value)) next.add(value);
  return next;
}
