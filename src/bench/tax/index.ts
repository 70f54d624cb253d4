export { taxView, type Period } from './tax-view.ts';
export { yearPack } from './year-pack.ts';
