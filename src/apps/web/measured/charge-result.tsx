import { useState } from 'react';
import { alarmWords, chargeEvidence, chargeTest, milli, PHASE_WORDS, verdictLines } from '../../../bench/logs/index.ts';
import type { ChargeJudged, ChargeQuestion, ChargeSample } from '../../../core/rework/index.ts';
import { recordTest } from '../actions/record-test.ts';
import { useUnit } from '../bench/unit-context.ts';
import { duration } from '../format/number.ts';
import { OUTCOME_WORDS, FINDING_WORDS } from '../format/words.ts';
import { useRecorder } from '../record/recorder-context.ts';
import { LogPlot } from './log-plot.tsx';

interface ChargeResultProps {
  readonly rows: readonly ChargeSample[];
  readonly judged: ChargeJudged;
  readonly question: ChargeQuestion;
}

/** What a log of a charge says, with its picture, and the button that notes it. */
export function ChargeResult({ rows, judged, question }: ChargeResultProps) {
  const { file, model } = useUnit();
  const { record, busy } = useRecorder();
  const [declined, setDeclined] = useState<readonly number[]>([]);
  const evidence = chargeEvidence(judged, model);
  const note = (): void =>
    void record(
      recordTest({
        itemId: file.row.id,
        test: 'charge-log',
        said: chargeTest(judged, question.ratedAh),
        minutes: 0,
        evidence: evidence.filter((_, i) => !declined.includes(i)),
      }),
    );
  return (
    <div className="form">
      {judged.alarms.length > 0 && (
        <ul className="odd lines" role="alert" aria-label="Alarms">
          {judged.alarms.map((alarm) => (
            <li key={alarm.kind}>{alarmWords(alarm)}</li>
          ))}
        </ul>
      )}
      <ul className="lines" aria-label="Verdicts">
        {verdictLines(judged.verdicts).map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <Plot rows={rows} judged={judged} />
      <Numbers judged={judged} />
      {evidence.length > 0 && (
        <fieldset className="chips">
          <legend>The advice then goes by this, too; take out what you do not agree with</legend>
          {evidence.map((each, i) => (
            <label key={each.name} className="check-line">
              <input
                type="checkbox"
                checked={!declined.includes(i)}
                onChange={(event) => setDeclined(event.target.checked ? declined.filter((other) => other !== i) : [...declined, i])}
              />
              {each.kind === 'trial'
                ? `Tried ${each.name}: ${OUTCOME_WORDS[each.outcome]}`
                : `Saw at ${each.name}: ${FINDING_WORDS[each.sees]}`}
            </label>
          ))}
        </fieldset>
      )}
      <button type="button" className="main" disabled={busy} onClick={note}>
        Note this log
      </button>
    </div>
  );
}

function Plot({ rows, judged }: Pick<ChargeResultProps, 'rows' | 'judged'>) {
  const sign = judged.turned ? -1 : 1;
  return (
    <LogPlot
      curves={[
        { name: 'Voltage', unit: 'V', points: rows.map(({ seconds, volts }) => [seconds, volts]) },
        { name: 'Current', unit: 'A', points: rows.map(({ seconds, amps }) => [seconds, sign * amps]) },
      ]}
      bands={judged.phases.map(({ kind, first, seconds }) => ({
        from: rows[first]!.seconds,
        to: rows[first]!.seconds + seconds,
        name: PHASE_WORDS[kind],
      }))}
      words={`Phases: ${judged.phases.map(({ kind, seconds }) => `${PHASE_WORDS[kind].toLowerCase()} ${duration(seconds / 60)}`).join(', ')}.`}
    />
  );
}

function Numbers({ judged: { capacityAh, charge, whole, resistance, end, turned, direction } }: Pick<ChargeResultProps, 'judged'>) {
  const word = direction === 'charge' ? 'Taken in' : 'Given';
  return (
    <dl className="numbers">
      <dt>{whole ? `${word}, from end to end` : `${word}, at least`}</dt>
      <dd>
        {milli(capacityAh)} ± {milli(charge.unsureAh)} mA h
      </dd>
      {charge.inGapsAh > 0 && (
        <>
          <dt>Of it in gaps</dt>
          <dd>{milli(charge.inGapsAh)} mA h</dd>
        </>
      )}
      {resistance && (
        <>
          <dt>Resistance by two loads</dt>
          <dd>
            {milli(resistance.ohms)} mΩ, from {resistance.steps} steps of the current within {Number(resistance.withinS.toPrecision(2))} s
          </dd>
        </>
      )}
      {end && (
        <>
          <dt>{end.terminated ? 'Ended by itself at' : 'Last current'}</dt>
          <dd>
            {milli(end.amps)} mA, holding {end.heldV.toFixed(3)} V
          </dd>
        </>
      )}
      {turned && (
        <>
          <dt>Sign of the current</dt>
          <dd>turned: the voltage says that it runs the other way</dd>
        </>
      )}
    </dl>
  );
}
