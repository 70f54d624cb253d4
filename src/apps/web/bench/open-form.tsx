import { openUnit } from '../actions/open-unit.ts';
import type { Stage } from '../../../bench/events/index.ts';
import { STAGE_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { OpeningLink } from './opening-link.tsx';
import { MinutesField } from './minutes-field.tsx';
import { useUnit } from './unit-context.ts';
import { useMinutes } from './use-minutes.ts';

const STAGES = Object.keys(STAGE_WORDS) as readonly Stage[];

/** How far it is open now, noted at once or step by step. */
export function OpenForm() {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const [minutes, setMinutes] = useMinutes(file.stage === 'closed' ? model.opening_minutes.open : model.opening_minutes.board_out);
  return (
    <div className="form">
      <OpeningLink />
      <MinutesField value={minutes} onChange={setMinutes} />
      <fieldset className="big-answers">
        <legend>Now it is</legend>
        {STAGES.filter((stage) => stage !== file.stage).map((stage) => (
          <button key={stage} type="button" disabled={busy} onClick={() => void record(openUnit(file.row.id, stage, minutes))}>
            {STAGE_WORDS[stage]}
          </button>
        ))}
      </fieldset>
    </div>
  );
}
