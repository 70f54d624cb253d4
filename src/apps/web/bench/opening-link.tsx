import { Link } from 'wouter';
import type { Stage } from '../../../bench/events/index.ts';
import { goalText } from '../../../bench/hands/goal-text.ts';
import type { Goal } from '../../../bench/hands/goals.ts';
import { useUnit } from './unit-context.ts';

interface OpeningLinkProps {
  /** What it is opened for; the first goal of the model where none is given. */
  readonly goal?: Goal;
  /** How far it must be open where the model does not know that goal. */
  readonly stage?: Stage;
}

/** To the steps of opening, where the model has some. */
export function OpeningLink({ goal, stage = 'open' }: OpeningLinkProps) {
  const { file, model } = useUnit();
  if (model.steps.length === 0) return null;
  const to = goal && (isKnown(goal, model) ? goal : ({ kind: 'stage', stage } as const));
  return (
    <p>
      <Link
        href={`/bench/${encodeURIComponent(file.row.id)}/opening${to ? `?to=${encodeURIComponent(goalText(to))}` : ''}`}
        className="button"
      >
        Open it step by step
      </Link>
    </p>
  );
}

function isKnown(goal: Goal, { checks, remedies }: ReturnType<typeof useUnit>['model']): boolean {
  if (goal.kind === 'check') return checks.some(({ id }) => id === goal.check);
  if (goal.kind === 'remedy') return remedies.some(({ id }) => id === goal.remedy);
  return true;
}
