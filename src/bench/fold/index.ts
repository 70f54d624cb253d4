export { emptyState } from './empty-state.ts';
export { applyEvent } from './apply-event.ts';
export { foldLog } from './fold-log.ts';
