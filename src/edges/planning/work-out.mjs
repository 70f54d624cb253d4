import { runPlanJob } from '../../bench/plan/index.js';
import { openLinearSolver } from '../solver/index.js';

const solver = openLinearSolver();

/** Does one job of planning in this thread, its linear programs in another. */
export default (job) => runPlanJob(job, solver.solve);
