import type { Piscina } from 'piscina';
import type { AnswerOf, PlanJob, PlanWorker } from '../../bench/ports.ts';

/** The thread is let go after so long without a job. */
const IDLE_MS = 60_000;

/** Plans in one thread beside the program's own work, started with the first job. */
export function openPlanWorker(): PlanWorker {
  let pool: Promise<Piscina> | undefined;
  return {
    run: async <J extends PlanJob>(job: J): Promise<AnswerOf<J>> => {
      pool ??= startPool();
      return (await pool).run(job) as Promise<AnswerOf<J>>;
    },
    close: async () => {
      await (await pool)?.destroy();
    },
  };
}

async function startPool(): Promise<Piscina> {
  const { Piscina: Workers } = await import('piscina');
  const filename = new URL('./work-out.mjs', import.meta.url).href;
  return new Workers({ filename, minThreads: 0, maxThreads: 1, idleTimeout: IDLE_MS });
}
