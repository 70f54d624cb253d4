import type { PlanWorker } from '../../ports.ts';
import { runPlanJob } from '../jobs.ts';

/** Works out plans where it stands, without a solver. */
export const plainWorker = (): PlanWorker => ({ run: (job) => runPlanJob(job), close: async () => undefined });
