import { orderSentence } from '../../../bench/hands/opening-words.ts';
import type { OpeningStep, OpeningView } from '../../../bench/views/index.ts';
import { chance, counted, duration } from '../format/number.ts';
import { Fold } from '../ui/fold.tsx';
import { Section } from '../ui/section.tsx';
import { Why } from '../ui/why.tsx';
import { GoalPicker } from './goal-picker.tsx';

interface WaySectionProps {
  readonly opening: OpeningView;
  readonly onPick: (goal: string) => void;
}

/** The whole way: what for, what it takes, the steps ahead, and how it is closed again. */
export function WaySection({ opening, onPick }: WaySectionProps) {
  const { steps, back, done } = opening;
  return (
    <Section id="way" title="The way">
      <GoalPicker opening={opening} onPick={onPick} />
      {steps.length > 0 && (
        <>
          <p>
            {counted(steps.length, 'step')}, about {duration(opening.minutes)}, {counted(opening.tool_changes, 'change')} of tool,{' '}
            {counted(opening.turnings, 'turning')}, {chance(opening.risk)} to damage something
          </p>
          <Why lines={[orderSentence(opening), WEIGHED]} summary="Why this order?" />
          <StepList steps={steps} />
        </>
      )}
      {done.length > 0 && (
        <Fold title={`Done: ${done.length}`}>
          <ol className="steps">
            {done.map(({ id, name }) => (
              <li key={id}>{name}</li>
            ))}
          </ol>
        </Fold>
      )}
      {back.length > 0 && (
        <Fold title={`To close it: ${counted(back.length, 'step')}, each backwards`} open={steps.length === 0}>
          <StepList steps={back} />
        </Fold>
      )}
    </Section>
  );
}

const WEIGHED =
  'A change of tool counts as 0.3 minutes, a turning and each step as 0.2, a sure damage as 240. Common practice, no source. Another way is open to you: pick a goal nearer by, or note what you did under “Note something you did”.';

function StepList({ steps }: { readonly steps: readonly OpeningStep[] }) {
  return (
    <ol className="steps">
      {steps.map((step) => (
        <li key={step.id}>
          {step.name}{' '}
          <span className="small muted">
            {[step.tool ?? 'fingers', step.turns ? 'turn it over' : '', duration(step.minutes)].filter((word) => word !== '').join(', ')}
          </span>
        </li>
      ))}
    </ol>
  );
}
