import { setTimeout as wait } from 'node:timers/promises';
import type PgBoss from 'pg-boss';
import type { JobNote, JobQueue, JobReport } from '../../bench/ports-jobs.ts';
import { jobId, packed, unpacked } from './job-key.ts';
import { kindOf, NOTED } from './own-queue.ts';

/** How often an asker looks whether its job is done, and a process whether there is one. */
const LOOK_EVERY_MS = 250;
/** A job that its process has not ended by then is given to another one. */
const EXPIRES_S = 120;
/** How often the jobs of processes that are gone are looked for. */
const UPKEEP_S = 20;

interface Packed {
  readonly packed: string;
}

/**
 * A queue in the PostgreSQL database that servers share: any of them may do a job that another asked for, and a job whose process dies is done again
 * by another one. An answer is kept for a while, so that servers that ask for the same get the same.
 */
export async function openBossQueue(url: string, log: (sentence: string, error: unknown) => void): Promise<JobQueue> {
  const { default: Boss } = await import('pg-boss');
  const boss = await untilFree(async () => {
    const begun = new Boss({ connectionString: url, max: 3, schedule: false, maintenanceIntervalSeconds: UPKEEP_S });
    begun.on('error', (error) => log('The queue of jobs met trouble.', error));
    return begun.start();
  });
  return new BossQueue(boss);
}

/** PostgreSQL's code of an end to a deadlock. */
const DEADLOCK = '40P01';
const MOST_TRIES = 8;

/** Processes that begin at once may each wait for a table that another one has: the database then ends one of them, which begins anew. */
async function untilFree<T>(work: () => Promise<T>): Promise<T> {
  for (let tries = 1; ; tries++)
    try {
      return await work();
    } catch (error) {
      if ((error as { code?: unknown }).code !== DEADLOCK || tries === MOST_TRIES) throw error;
      await wait(100 * tries);
    }
}

class BossQueue implements JobQueue {
  readonly #ready = new Map<string, Promise<void>>();
  #isClosed = false;

  constructor(private readonly boss: PgBoss) {}

  async serve<Job, Answer>(name: string, work: (job: Job) => Promise<Answer>): Promise<void> {
    await this.#queue(name);
    await this.boss.work<Packed>(name, { pollingIntervalSeconds: 0.5 }, async ([job]) => {
      try {
        return { packed: packed(await work(unpacked(job!.data.packed) as Job)) };
      } catch (error) {
        throw new JobFailed(kindOf(error));
      }
    });
  }

  async ask<Job, Answer>(name: string, job: Job): Promise<Answer> {
    await this.#queue(name);
    const data = packed(job);
    const id = jobId(name, data);
    await this.#forgetFailed(name, id);
    await this.boss.send(name, { packed: data }, { id });
    for (;;) {
      const found = await this.boss.getJobById<Packed>(name, id);
      if (found?.state === 'completed') return unpacked((found.output as Packed).packed) as Answer;
      if (found?.state === 'failed' || found?.state === 'cancelled') throw new JobFailed(kindIn(found.output));
      if (this.#isClosed) throw new JobFailed('closed');
      await wait(LOOK_EVERY_MS);
    }
  }

  async report(): Promise<JobReport> {
    const { rows } = (await this.boss.getDb().executeSql(REPORT, [[...this.#ready.keys()]])) as { rows: Row[] };
    const [done, failed] = [rows.filter(({ state }) => state === 'completed'), rows.filter(({ state }) => state === 'failed')];
    return {
      waiting: rows.length - done.length - failed.length,
      slow: done
        .toSorted((a, b) => b.seconds - a.seconds)
        .slice(0, NOTED)
        .map(noteOf),
      failed: failed
        .toSorted((a, b) => b.at.getTime() - a.at.getTime())
        .slice(0, NOTED)
        .map(noteOf),
    };
  }

  async close(): Promise<void> {
    this.#isClosed = true;
    await this.boss.stop({ graceful: true, wait: true, timeout: 5000 });
  }

  #queue(name: string): Promise<void> {
    const known = this.#ready.get(name);
    if (known) return known;
    const made = untilFree(() => this.boss.createQueue(name, { name, expireInSeconds: EXPIRES_S, retryLimit: 1 }));
    this.#ready.set(name, made);
    made.catch(() => this.#ready.delete(name));
    return made;
  }

  /** What failed before may be tried again. */
  async #forgetFailed(name: string, id: string): Promise<void> {
    const known = await this.boss.getJobById(name, id);
    if (known?.state === 'failed' || known?.state === 'cancelled') await this.boss.deleteJob(name, id);
  }
}

/** The job could not be done; `code` is the kind of error that it ended in. */
export class JobFailed extends Error {
  constructor(readonly code: string) {
    super(`a job could not be done (${code})`);
    this.name = 'JobFailed';
  }
}

interface Row {
  readonly name: string;
  readonly state: string;
  readonly at: Date;
  readonly seconds: number;
  readonly output: object | null;
}

const REPORT = `
  SELECT name, state::text, coalesce(completed_on, started_on, created_on) AS at,
    coalesce(extract(epoch FROM completed_on - started_on), 0)::float8 AS seconds, CASE state WHEN 'failed' THEN output END AS output
  FROM pgboss.job WHERE name = ANY($1::text[])`;

const noteOf = ({ name, at, seconds, state, output }: Row): JobNote => ({
  name,
  at: at.toISOString(),
  seconds,
  error: state === 'failed' ? kindIn(output) : null,
});

/** The kind of error in what the queue keeps of a job that failed. */
const kindIn = (output: object | null): string =>
  output !== null && 'code' in output && typeof output.code === 'string' ? output.code : 'unknown';
