export { moveLog, type Moved, type MoveTarget } from './move-log.ts';
export { itemHistory, subjectsKept } from './item-history.ts';
export { movePhotos } from './move-photos.ts';
export { openSharedBench, type SharedBench } from './open-shared-bench.ts';
export { ownDoor } from './own-door.ts';
