export { openSharedBench, type SharedBench } from './open-shared-bench.ts';
export { ownDoor } from './own-door.ts';
