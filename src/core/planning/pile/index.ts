export * from './pile.ts';
export { problemOf, type Problem } from './problem.ts';
export { LinearProgramBuilder, type LinearAnswer, type LinearProgram, type SolveLinearProgram } from './linear-program.ts';
