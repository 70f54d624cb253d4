import type { JobQueue } from '../ports-jobs.ts';
import type { AnswerOf, PlanJob, PlanWorker } from '../ports.ts';

const NAME = 'plan';

/** Plans as jobs of a queue, which this process does with `worker` when it is its turn: what several servers ask for alike is worked out once. */
export async function queuedPlans(jobs: JobQueue, worker: PlanWorker): Promise<PlanWorker> {
  await jobs.serve(NAME, (job: PlanJob) => worker.run(job));
  return { run: <J extends PlanJob>(job: J) => jobs.ask<J, AnswerOf<J>>(NAME, job), close: worker.close };
}
