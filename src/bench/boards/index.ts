export type { BoardFault, BoardKnowledge, BoardPoint, BoardProgress, Boards, BoardShelf } from './board-knowledge.ts';
export { BoardWork, boardTask, DRAWS, slicesOf, stepsOf, togetherOn, type BoardRows, type BoardTask } from './board-work.ts';
export { GrownKnowledge } from './grown-knowledge.ts';
export { simulatedPairs } from './simulated-pairs.ts';
export { boardPoints } from './board-points.ts';
