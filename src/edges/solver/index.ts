export { openLinearSolver, type LinearSolver } from './linear-solver.ts';
