/* oxlint-disable unicorn/require-post-message-target-origin -- a worker thread, not a window */
import { parentPort } from 'node:worker_threads';
import type { CompareRequest } from '../../bench/ports.ts';
import { comparePhotos } from './compare-photos.ts';
import { judgePhoto } from './judge-photo.ts';

/** What the worker is asked, and what it answers; `cancelled` is set from outside while it works. */
export type Asked = { readonly id: number } & (
  | { readonly request: CompareRequest; readonly cancelled: Int32Array }
  | { readonly photo: Uint8Array; readonly reference: Uint8Array | null }
);

/** One after the other: each needs the whole thread, and a judgement that is asked meanwhile waits for one comparison at most. */
let before: Promise<void> = Promise.resolve();

parentPort?.on('message', (asked: Asked) => {
  before = before.then(() => answer(asked));
});

async function answer(asked: Asked): Promise<void> {
  const { id } = asked;
  try {
    parentPort!.postMessage({ id, result: await resultOf(asked) });
  } catch (error) {
    parentPort!.postMessage({ id, failure: String((error as Error).stack ?? error) });
  }
}

function resultOf(asked: Asked): Promise<unknown> {
  if ('photo' in asked) return judgePhoto(asked.photo, asked.reference);
  return comparePhotos(asked.request, {
    progress: (step, share) => parentPort!.postMessage({ id: asked.id, step, share }),
    shouldStop: () => Atomics.load(asked.cancelled, 0) === 1,
  });
}
