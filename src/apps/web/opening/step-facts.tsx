import type { OpeningStep } from '../../../bench/views/index.ts';
import { chance, counted, duration } from '../format/number.ts';

const SIDE_UP = { front: 'Front up', back: 'Back up' } as const;

/** Tool, side, minutes and risk of a step, changes told plainly. */
export function StepFacts({ step }: { readonly step: OpeningStep }) {
  const { tool, side, turns, minutes, model_minutes: usual, times, risk } = step;
  return (
    <dl className="figures step-facts">
      <div>
        <dt>Tool</dt>
        <dd>
          {tool ?? 'Fingers'}
          {step.changes_tool && <small>take it up</small>}
        </dd>
      </div>
      {side !== null && (
        <div>
          <dt>Side</dt>
          <dd>
            {SIDE_UP[side]}
            {turns && <small>turn it over</small>}
          </dd>
        </div>
      )}
      <div>
        <dt>Takes about</dt>
        <dd>
          {duration(minutes)}
          <small>{times > 0 ? `model ${duration(usual)}, you ${counted(times, 'time')}` : 'as the model says'}</small>
        </dd>
      </div>
      {risk > 0 && (
        <div>
          <dt>Damages something</dt>
          <dd>{chance(risk)}</dd>
        </div>
      )}
    </dl>
  );
}
