import type { OpeningView } from '../views/opening.ts';

/** Why there is no way to a goal, and what to do then. */
export const NO_WAY_WORDS: Readonly<Record<Exclude<OpeningView['reached'], 'way'>, string>> = {
  'unknown-goal': 'The model does not have that. Pick one of its goals.',
  'no-step-leads-there': 'No step of the model leads there. Open it by your own judgement and note how far it is open.',
  'goal-out-of-reach': 'What is left of the steps does not lead there. Put a step back, or pick another goal.',
};

/** How good the order is, in one sentence: proved, or by how much at most another one could be better. */
export function orderSentence({ exact, cost_minutes: cost, bound_minutes: bound }: OpeningView): string {
  if (exact) return 'No other order of steps is better: fewest minutes, changes of tool, turnings and least risk, weighed together.';
  return `A good order, not proved to be the best: no other takes less than ${tenths(bound)} of its ${tenths(cost)} weighed minutes.`;
}

const tenths = (minutes: number): string => (Math.round(minutes * 10) / 10).toString();
