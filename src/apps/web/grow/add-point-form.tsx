import { useState } from 'react';
import type { MeterMode, Stage } from '../../../bench/events/index.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import { setFacts } from '../actions/set-fact.ts';
import { MODE_WORDS, STAGE_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Field } from '../ui/field.tsx';
import { Pick } from '../ui/pick.tsx';
import { pointFacts, POWERS, type PointFields } from './point-facts.ts';

const SIDES = [
  { id: 'front', name: 'Front' },
  { id: 'back', name: 'Back' },
];
const named = (words: Readonly<Record<string, string>>) => Object.entries(words).map(([id, name]) => ({ id, name }));

/** A place and a way to measure it, with the check that asks for it. */
export function AddPointForm({ file }: { readonly file: ModelFile }) {
  const { record, busy } = useRecorder();
  const [name, setName] = useState('');
  const [block, setBlock] = useState(file.blocks[0]!.id);
  const [mode, setMode] = useState<MeterMode>('diode');
  const [power, setPower] = useState<PointFields['power']>('off');
  const [stage, setStage] = useState<Stage>('board-out');
  const [side, setSide] = useState<PointFields['side']>('front');
  const add = async (): Promise<void> => {
    const facts = pointFacts(file, { name: name.trim(), block, mode, power, stage, side });
    if (await record(setFacts(file.id, `point ${name.trim()}`, facts))) setName('');
  };
  return (
    <form
      className="form"
      onSubmit={(event) => {
        event.preventDefault();
        void add();
      }}
    >
      <div className="fields">
        <Field label="Name of the point" hint="What stands beside it, or what it carries">
          <input value={name} required maxLength={200} pattern=".*\S.*" onChange={(event) => setName(event.target.value)} />
        </Field>
        <Pick label="Block that it tells of" options={file.blocks} value={block} onChange={setBlock} />
        <Pick label="Measured in" options={named(MODE_WORDS)} value={mode} onChange={(id) => setMode(id as MeterMode)} />
        <Pick label="Power" options={POWERS} value={power} onChange={(id) => setPower(id as PointFields['power'])} />
        <Pick label="Opened so far" options={named(STAGE_WORDS)} value={stage} onChange={(id) => setStage(id as Stage)} />
        <Pick label="Side of the board" options={SIDES} value={side} onChange={(id) => setSide(id as PointFields['side'])} />
      </div>
      <button type="submit" disabled={busy}>
        Add this point
      </button>
    </form>
  );
}
