import type { MeterMode, Stage } from '../../../bench/events/index.ts';
import { reading } from '../format/reading.ts';
import type { Gesture } from './gesture.ts';
import { openedOnTheWay } from './opened-on-the-way.ts';

export interface MeterAnswer {
  readonly itemId: string;
  readonly point: string;
  readonly pointName: string;
  readonly mode: MeterMode;
  /** V, Ω or A; null is OL. */
  readonly value: number | null;
  readonly minutes: number;
  readonly stage: Stage;
  readonly stageNeeded: Stage;
}

/** What the meter showed at a point. */
export const recordReading = (answer: MeterAnswer): Gesture => ({
  said: `${answer.pointName}: ${reading(answer.value, answer.mode)}`,
  drafts: [
    ...openedOnTheWay(answer.itemId, answer.stage, answer.stageNeeded),
    {
      kind: 'reading-taken',
      body: { item_id: answer.itemId, point: answer.point, mode: answer.mode, value: answer.value, minutes: answer.minutes },
    },
  ],
});
