export type { BoardSense } from './board-sense.ts';
export { believeBoard, type BoardBelief, type BoardOptions } from './believe-board.ts';
export { likelyPart, type LikelyPart } from './likely-part.ts';
export { BoardReadingsAhead } from './readings-ahead.ts';
export { asMeasured } from './recentre.ts';
