/* oxlint-disable unicorn/require-post-message-target-origin -- a worker thread, not a window */
import { parentPort } from 'node:worker_threads';
import { comparePhotos, type CompareRequest } from './compare-photos.ts';

/** What the worker is asked, and what it answers; `cancelled` is set from outside while it works. */
export interface Asked {
  readonly id: number;
  readonly request: CompareRequest;
  readonly cancelled: Int32Array;
}

parentPort?.on('message', async ({ id, request, cancelled }: Asked) => {
  const hooks = {
    progress: (step: string, share: number): void => parentPort!.postMessage({ id, step, share }),
    shouldStop: (): boolean => Atomics.load(cancelled, 0) === 1,
  };
  try {
    parentPort!.postMessage({ id, result: await comparePhotos(request, hooks) });
  } catch (error) {
    parentPort!.postMessage({ id, failure: String((error as Error).stack ?? error) });
  }
});
