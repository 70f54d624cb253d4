import { useState } from 'react';
import { recordFinding } from '../actions/record-finding.ts';
import type { FindingKind, Region } from '../../../bench/events/index.ts';
import { FINDING_KINDS, FINDING_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { nameIn, type AnswerFormProps } from './answer-form.ts';
import { MinutesField } from './minutes-field.tsx';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

interface LookAnswerFormProps extends AnswerFormProps {
  readonly likely: readonly string[];
  /** How the place is called, where the model has no name for it. */
  readonly placeName?: string;
  /** The area that was drawn around it. */
  readonly region?: Region;
  /** What is noted besides, such as which pins. */
  readonly text?: string;
  readonly whenNoted?: () => void;
}

/** What is seen, as big buttons: first what the model expects here, the rest on demand. */
export function LookAnswerForm({
  target,
  usualMinutes,
  stageNeeded,
  likely,
  placeName: said,
  region,
  text,
  whenNoted,
}: LookAnswerFormProps) {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const [minutes, setMinutes] = useMinutes(usualMinutes);
  const [showsAll, setShowsAll] = useState(false);
  const placeName = said ?? nameIn(model.blocks, target);
  const first = FINDING_KINDS.filter((kind) => kind === 'nothing-wrong' || likely.includes(kind));
  const rest = FINDING_KINDS.filter((kind) => !first.includes(kind));
  const answer = async (sees: FindingKind): Promise<void> => {
    const seen = { itemId: file.row.id, place: target, placeName, sees, minutes, ...(region ? { region } : {}), ...(text ? { text } : {}) };
    if (await record(recordFinding({ ...seen, stage: file.stage, stageNeeded }))) whenNoted?.();
  };
  return (
    <div className="form">
      <fieldset className="big-answers">
        <legend>{placeName}: what do you see?</legend>
        {[...first, ...(showsAll ? rest : [])].map((kind) => (
          <button key={kind} type="button" disabled={busy} onClick={() => void answer(kind)}>
            {FINDING_WORDS[kind]}
          </button>
        ))}
        {!showsAll && rest.length > 0 && (
          <button type="button" className="quiet" onClick={() => setShowsAll(true)}>
            Something else …
          </button>
        )}
      </fieldset>
      <MinutesField value={minutes} onChange={setMinutes} />
    </div>
  );
}
