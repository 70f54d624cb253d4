export { learnedView } from './learned-view.ts';
export { withLearned } from './with-learned.ts';
