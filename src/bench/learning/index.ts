export { learnedView } from './learned-view.ts';
