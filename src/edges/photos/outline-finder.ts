import type { Piscina } from 'piscina';
import type { OutlineFinder, PhotoOutlines } from '../../bench/ports.ts';
import type { OutlineTask } from './outline-job.ts';

/** A finder with one worker thread, started with the first photo and let go after half a minute without one. A cancelled search ends with its thread. */
export function openOutlineFinder(): OutlineFinder {
  let workers: Promise<Piscina<OutlineTask, PhotoOutlines>> | undefined;
  return {
    propose: (photo, question) => {
      const ending = new AbortController();
      const done = (workers ??= startWorkers()).then((pool) => pool.run({ photo, question }, { signal: ending.signal }));
      const orStopped = done.catch((error: unknown): PhotoOutlines => {
        if (!ending.signal.aborted) throw error;
        return { ok: false, code: 'stopped' };
      });
      return { done: orStopped, cancel: () => ending.abort() };
    },
    close: async () => void (await (await workers)?.destroy()),
  };
}

async function startWorkers(): Promise<Piscina<OutlineTask, PhotoOutlines>> {
  const { Piscina: Workers } = await import('piscina');
  return new Workers({ filename: new URL('./outline-job.js', import.meta.url).href, minThreads: 0, maxThreads: 1, idleTimeout: 30_000 });
}
