import type { MeterMode } from '../../../bench/events/index.ts';
import { counted } from '../format/number.ts';
import type { Gesture } from './gesture.ts';

export interface TaughtReading {
  readonly point: string;
  readonly mode: MeterMode;
  /** V, Ω or A; null is OL. */
  readonly value: number | null;
}

export interface TaughtBoard {
  readonly modelId: string;
  readonly board: string;
  readonly revision: string;
  /** The item on the bench that it is. */
  readonly itemId?: string;
}

/** What a known-good board shows at points of its model. */
export const teachReadings = ({ modelId, board, revision, itemId }: TaughtBoard, readings: readonly TaughtReading[]): Gesture => ({
  said: `${counted(readings.length, 'known-good reading')} of ${board}`,
  drafts: readings.map(({ point, mode, value }) => ({
    kind: 'model-reading-taught',
    body: { model_id: modelId, board, revision, point, mode, value, ...(itemId === undefined ? {} : { item_id: itemId }) },
  })),
});
