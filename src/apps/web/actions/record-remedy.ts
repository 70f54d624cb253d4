import type { Body, Stage } from '../../../bench/events/index.ts';
import type { Draft, Gesture } from './gesture.ts';
import { openedOnTheWay } from './opened-on-the-way.ts';

export interface RemedyAnswer {
  readonly itemId: string;
  readonly remedy: string;
  readonly remedyName: string;
  readonly minutes: number;
  readonly outcome: Body<'remedy-done'>['outcome'];
  readonly text: string;
  readonly stage: Stage;
  readonly stageNeeded: Stage;
  /** The parts that it took, as drafts of `takeParts`. */
  readonly parts: readonly Draft[];
}

/** The work is done: parts leave the drawer, minutes and outcome go on record. */
export const recordRemedy = (answer: RemedyAnswer): Gesture => ({
  said: `${answer.remedyName} done`,
  drafts: [
    ...openedOnTheWay(answer.itemId, answer.stage, answer.stageNeeded),
    ...answer.parts,
    {
      kind: 'remedy-done',
      body: { item_id: answer.itemId, remedy: answer.remedy, minutes: answer.minutes, outcome: answer.outcome, text: answer.text },
    },
  ],
});
