import type { FindingKind, Region, Stage } from '../../../bench/events/index.ts';
import { FINDING_WORDS } from '../format/words.ts';
import type { Gesture } from './gesture.ts';
import { openedOnTheWay } from './opened-on-the-way.ts';

export interface LookAnswer {
  readonly itemId: string;
  readonly place: string;
  readonly placeName: string;
  readonly sees: FindingKind;
  readonly text?: string;
  readonly region?: Region;
  readonly minutes: number;
  readonly stage: Stage;
  readonly stageNeeded: Stage;
}

/** What was seen at a place of the unit. */
export const recordFinding = (answer: LookAnswer): Gesture => ({
  said: `${answer.placeName}: ${FINDING_WORDS[answer.sees].toLowerCase()}`,
  drafts: [
    ...openedOnTheWay(answer.itemId, answer.stage, answer.stageNeeded),
    {
      kind: 'finding-noted',
      body: {
        item_id: answer.itemId,
        place: answer.place,
        sees: answer.sees,
        text: answer.text ?? '',
        minutes: answer.minutes,
        ...(answer.region ? { region: answer.region } : {}),
      },
    },
  ],
});
