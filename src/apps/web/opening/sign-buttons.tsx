import { recordFinding } from '../actions/record-finding.ts';
import type { OpeningStep, OpeningView } from '../../../bench/views/index.ts';
import { FINDING_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';

interface SignButtonsProps {
  readonly opening: OpeningView;
  readonly signs: OpeningStep['signs'];
}

/** What may show at this step, place by place: a tap notes it as a finding. */
export function SignButtons({ opening, signs }: SignButtonsProps) {
  const { record, busy } = useRecorder();
  const places = [...new Map(signs.map(({ at, at_name: name }) => [at, name]))];
  const note = ({ at, at_name: placeName, sees, name: text }: OpeningStep['signs'][number]): void =>
    void record(
      recordFinding({
        itemId: opening.item_id,
        place: at,
        placeName,
        sees,
        text,
        minutes: 0,
        stage: opening.stage,
        stageNeeded: opening.stage,
      }),
    );
  return (
    <>
      {places.map(([at, name]) => (
        <fieldset key={at} className="big-answers signs">
          <legend>{name}: tap what you see</legend>
          {signs
            .filter((sign) => sign.at === at)
            .map((sign) => (
              <button key={`${sign.sees} ${sign.name}`} type="button" disabled={busy} onClick={() => note(sign)}>
                {sign.name === '' ? FINDING_WORDS[sign.sees] : sign.name}
              </button>
            ))}
        </fieldset>
      ))}
    </>
  );
}
