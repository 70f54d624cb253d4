export type { BoardSense } from './board-sense.ts';
export { believeBoard, type BoardBelief, type BoardOptions } from './believe-board.ts';
export { BoardReadingsAhead } from './readings-ahead.ts';
