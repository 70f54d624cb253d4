export * from './pile.ts';
export { problemOf, type Problem } from './problem.ts';
