export { emptyState, newItem } from './empty-state.ts';
export { applyEvent, isRefolding } from './apply-event.ts';
export { foldLog } from './fold-log.ts';
