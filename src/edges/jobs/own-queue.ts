import type { JobNote, JobQueue } from '../../bench/ports-jobs.ts';
import { jobId, packed } from './job-key.ts';

/** How many jobs the report remembers of each kind. */
export const NOTED = 20;

type Work = (job: unknown) => Promise<unknown>;

/** A queue in this process: jobs wait in memory, and are gone with it. */
export function openOwnQueue(now: () => Date): JobQueue {
  const works = new Map<string, Work>();
  const turns = new Map<string, Promise<unknown>>();
  const underway = new Map<string, Promise<unknown>>();
  let notes: JobNote[] = [];

  const note = (name: string, started: Date, error: unknown): void => {
    const at = now();
    const seconds = (at.getTime() - started.getTime()) / 1000;
    notes.push({ name, at: at.toISOString(), seconds, error: error === null ? null : kindOf(error) });
    const isKept = new Set([...slowest(notes), ...failed(notes)]);
    notes = notes.filter((each) => isKept.has(each));
  };
  const doOne = async (name: string, job: unknown): Promise<unknown> => {
    const started = now();
    try {
      const answer = await works.get(name)!(job);
      note(name, started, null);
      return answer;
    } catch (error) {
      note(name, started, error);
      throw error;
    }
  };
  return {
    async serve(name, work) {
      works.set(name, work as Work);
    },
    ask<Job, Answer>(name: string, job: Job): Promise<Answer> {
      const id = jobId(name, packed(job));
      const same = underway.get(id) as Promise<Answer> | undefined;
      if (same) return same;
      const turn = (turns.get(name) ?? Promise.resolve()).then(() => doOne(name, job));
      const mine = turn.finally(() => underway.delete(id)) as Promise<Answer>;
      turns.set(
        name,
        turn.catch(() => undefined),
      );
      underway.set(id, mine);
      return mine;
    },
    report: async () => ({ waiting: underway.size, slow: slowest(notes), failed: failed(notes) }),
    async close() {
      await Promise.all(turns.values());
    },
  };
}

const slowest = (notes: readonly JobNote[]): JobNote[] =>
  notes
    .filter(({ error }) => error === null)
    .toSorted((a, b) => b.seconds - a.seconds)
    .slice(0, NOTED);
const failed = (notes: readonly JobNote[]): JobNote[] =>
  notes
    .filter(({ error }) => error !== null)
    .toReversed()
    .slice(0, NOTED);

/** The kind of an error, without its words, which may hold something of the bench. */
export function kindOf(error: unknown): string {
  if (!(error instanceof Error)) return 'unknown';
  return 'code' in error && typeof error.code === 'string' ? `${error.name} ${error.code}` : error.name;
}
