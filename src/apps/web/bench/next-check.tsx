import type { CheckView } from '../../../bench/views/index.ts';
import { money } from '../format/money.ts';
import { duration } from '../format/number.ts';
import { isDeeper, STAGE_WORDS } from '../format/words.ts';
import { Cautions } from '../ui/cautions.tsx';
import { Why } from '../ui/why.tsx';
import { OpeningLink } from './opening-link.tsx';
import { CheckOutcomes } from './check-outcomes.tsx';
import { LookAnswerForm } from './look-answer-form.tsx';
import { MeasureCheckForm } from './measure-check-form.tsx';
import { ProbeGuide } from './probe-guide.tsx';
import { TryAnswerForm } from './try-answer-form.tsx';
import { useUnit } from './unit-context.ts';

/** One check: how to do it, what to mind, and the buttons that take what came out. */
export function NextCheck({ check, saysWhy = false }: { readonly check: CheckView; readonly saysWhy?: boolean }) {
  const { file, bench } = useUnit();
  const needsOpening = isDeeper(check.stage, file.stage);
  return (
    <div className="form">
      <p className="small muted">
        About {duration(check.minutes)}
        {needsOpening && `, opening included (${STAGE_WORDS[check.stage].toLowerCase()})`} · expected to save{' '}
        {money(check.saving_minor, bench.currency)}
      </p>
      {needsOpening && <OpeningLink goal={{ kind: 'check', check: check.id }} stage={check.stage} />}
      {check.probe ? <ProbeGuide probe={check.probe} /> : check.how !== '' && <p>{check.how}</p>}
      <Cautions cautions={check.cautions} />
      {check.reference !== null && (
        <p>
          <b>A good one shows</b> {check.reference}
        </p>
      )}
      <AnswerForm check={check} />
      <CheckOutcomes outcomes={check.outcomes} mode={check.mode} />
      {saysWhy && <Why lines={check.why} summary="Why this check?" />}
    </div>
  );
}

function AnswerForm({ check }: { readonly check: CheckView }) {
  const shared = { target: check.target, usualMinutes: check.minutes, stageNeeded: check.stage };
  if (check.kind === 'try') return <TryAnswerForm {...shared} accessories={check.with} />;
  if (check.kind === 'look') return <LookAnswerForm {...shared} likely={check.outcomes.map((each) => each.outcome)} />;
  return <MeasureCheckForm check={check} />;
}
