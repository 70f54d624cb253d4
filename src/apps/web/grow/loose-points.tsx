import { useState } from 'react';
import type { MeterMode } from '../../../bench/events/index.ts';
import type { ModelFile } from '../../../bench/models/index.ts';
import { setFacts } from '../actions/set-fact.ts';
import { MODE_WORDS } from '../format/words.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Fold } from '../ui/fold.tsx';
import { Pick } from '../ui/pick.tsx';
import type { EditorPart } from './editor-part.ts';
import { pointFacts, POWERS, type PointFields } from './point-facts.ts';
import { pointIdOf } from './reading-walk.ts';

/** Test points that are marked on the picture and that no point of the model measures yet: all become points at once. Nothing where there are none. */
export function LoosePoints({ file, parts }: { readonly file: ModelFile; readonly parts: readonly EditorPart[] }) {
  const { record, busy } = useRecorder();
  const [mode, setMode] = useState<MeterMode>('diode');
  const [power, setPower] = useState<PointFields['power']>('off');
  const [block, setBlock] = useState(file.blocks[0]!.id);
  const loose = parts.filter((part) => part.kind === 'test-point' && !file.points.some(({ id }) => id === pointIdOf(part)));
  if (loose.length === 0) return null;
  const add = (): void => {
    const facts = loose.flatMap((part) => {
      const id = pointIdOf(part);
      const at = [part.x, part.y] as const;
      return pointFacts(file, { name: id, block: part.block || block, mode, power, stage: 'board-out', side: part.side, at }, id);
    });
    void record(setFacts(file.id, counted(loose.length, 'point'), facts));
  };
  return (
    <Fold title={`${counted(loose.length, 'marked test point')} not measured yet`} open>
      <div className="fields">
        <Pick
          label="Measured in"
          options={Object.entries(MODE_WORDS).map(([id, name]) => ({ id, name }))}
          value={mode}
          onChange={(id) => setMode(id as MeterMode)}
        />
        <Pick label="Power" options={POWERS} value={power} onChange={(id) => setPower(id as PointFields['power'])} />
        <Pick label="Block, where none is marked" options={file.blocks} value={block} onChange={setBlock} />
      </div>
      <p className="small muted">{loose.map((part) => pointIdOf(part)).join(', ')}</p>
      <button type="button" disabled={busy} onClick={add}>
        Measure {loose.length === 1 ? 'it' : 'them'} so
      </button>
    </Fold>
  );
}
