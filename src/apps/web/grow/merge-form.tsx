import { useMemo, useState } from 'react';
import { saidOf } from '../../../bench/grow/fact-text.ts';
import { factsToTake, mergeModels, type Conflict } from '../../../bench/grow/merge-models.ts';
import type { ModelBundle } from '../../../bench/events/index.ts';
import { takeIntoModel } from '../actions/take-model.ts';
import { useSharing } from '../api/queries.ts';
import { counted } from '../format/number.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { Answer } from '../ui/answer.tsx';
import { TableScroll } from '../ui/table-scroll.tsx';
import { BundleFile } from './bundle-file.tsx';

/** Another's model into this one: what is new comes in, and where the two differ both stand side by side. */
export function MergeForm({ modelId }: { readonly modelId: string }) {
  const [bundle, setBundle] = useState<ModelBundle | null>(null);
  const ours = useSharing(modelId, 'A bench', '');
  return (
    <div className="form">
      <BundleFile bundle={bundle} onChange={setBundle} />
      {bundle && (
        <Answer query={ours}>
          {(sharing) =>
            sharing && (
              <Differences key={bundle.author} modelId={modelId} ours={sharing.facts} bundle={bundle} done={() => setBundle(null)} />
            )
          }
        </Answer>
      )}
    </div>
  );
}

interface DifferencesProps {
  readonly modelId: string;
  readonly ours: ModelBundle['facts'];
  readonly bundle: ModelBundle;
  readonly done: () => void;
}

function Differences({ modelId, ours, bundle, done }: DifferencesProps) {
  const { record, busy } = useRecorder();
  const merge = useMemo(() => mergeModels(ours, bundle.facts, bundle.author), [ours, bundle]);
  const [theirs, setTheirs] = useState<ReadonlySet<number>>(new Set());
  const facts = factsToTake(merge, (_conflict, index) => theirs.has(index));
  const choose = (index: number, isTheirs: boolean): void => {
    const next = new Set(theirs);
    if (isTheirs) next.add(index);
    else next.delete(index);
    setTheirs(next);
  };
  const take = async (): Promise<void> => {
    if (await record(takeIntoModel(modelId, bundle, facts))) done();
  };
  return (
    <>
      <p>
        In both: {counted(merge.agreed, 'fact')}. New here: {counted(merge.fresh.length, 'fact')}. Different:{' '}
        {counted(merge.conflicts.length, 'place')}.
      </p>
      {merge.conflicts.length > 0 && (
        <TableScroll label="Where the two differ">
          <thead>
            <tr>
              <th scope="col">Place</th>
              <th scope="col">Yours</th>
              <th scope="col">Theirs</th>
            </tr>
          </thead>
          <tbody>
            {merge.conflicts.map((conflict, index) => (
              <ConflictRow
                key={index}
                name={`conflict-${index}`}
                conflict={conflict}
                isTheirs={theirs.has(index)}
                choose={(isTheirs) => choose(index, isTheirs)}
              />
            ))}
          </tbody>
        </TableScroll>
      )}
      <button type="button" className="main" disabled={busy || facts.length === 0} onClick={() => void take()}>
        Take in {counted(facts.length, 'fact')}
      </button>
    </>
  );
}

interface ConflictRowProps {
  readonly name: string;
  readonly conflict: Conflict;
  readonly isTheirs: boolean;
  readonly choose: (isTheirs: boolean) => void;
}

function ConflictRow({ name, conflict: { place, ours, theirs }, isTheirs, choose }: ConflictRowProps) {
  const side = (whose: string, said: string, mine: boolean) => (
    <td>
      <label className="check-line">
        <input
          type="radio"
          name={name}
          aria-label={`${place}: ${whose}, ${said}`}
          checked={isTheirs !== mine}
          onChange={() => choose(!mine)}
        />
        {said}
      </label>
    </td>
  );
  return (
    <tr>
      <th scope="row">{place}</th>
      {side('yours', saidOf(ours), true)}
      {side('theirs', saidOf(theirs), false)}
    </tr>
  );
}
