import type { Outcome, Stage } from '../../../bench/events/index.ts';
import { OUTCOME_WORDS } from '../format/words.ts';
import type { Gesture } from './gesture.ts';
import { openedOnTheWay } from './opened-on-the-way.ts';

export interface TrialAnswer {
  readonly itemId: string;
  readonly function: string;
  readonly functionName: string;
  readonly outcome: Outcome;
  readonly with: readonly string[];
  readonly minutes: number;
  readonly stage: Stage;
  readonly stageNeeded: Stage;
}

/** How a function behaved when it was tried, with which known-good accessories. */
export const recordTrial = (answer: TrialAnswer): Gesture => ({
  said: `${answer.functionName}: ${OUTCOME_WORDS[answer.outcome].toLowerCase()}`,
  drafts: [
    ...openedOnTheWay(answer.itemId, answer.stage, answer.stageNeeded),
    {
      kind: 'trial-done',
      body: {
        item_id: answer.itemId,
        function: answer.function,
        outcome: answer.outcome,
        with: [...answer.with],
        minutes: answer.minutes,
      },
    },
  ],
});
