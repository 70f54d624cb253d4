/* oxlint-disable unicorn/require-post-message-target-origin -- a worker thread, not a window */
import { Worker } from 'node:worker_threads';
import type { CompareRequest, Comparing, PhotoComparer, PhotoComparison, PhotoJudgement } from '../../bench/ports.ts';

const IDLE_MS = 30_000;

/**
 * A comparer with one worker thread, started with the first pair and let go after half a minute without one: of two cores the other stays with the person. It keeps the
 * program alive only while something is asked.
 */
export const openPhotoComparer = (): PhotoComparer => new OneWorker();

type Progress = Parameters<PhotoComparer['compare']>[1];

interface Waiting {
  readonly resolve: (result: unknown) => void;
  readonly reject: (error: Error) => void;
  readonly progress: Progress;
}

type Answer =
  | { readonly id: number; readonly step: Parameters<NonNullable<Progress>>[0]; readonly share: number }
  | { readonly id: number; readonly result: unknown }
  | { readonly id: number; readonly failure: string };

class OneWorker implements PhotoComparer {
  private worker: Worker | undefined;
  private idle: NodeJS.Timeout | undefined;
  private readonly waiting = new Map<number, Waiting>();
  private last = 0;

  compare(request: CompareRequest, progress?: Progress): Comparing {
    const cancelled = new Int32Array(new SharedArrayBuffer(4));
    return { done: this.ask<PhotoComparison>({ request, cancelled }, progress), cancel: () => void Atomics.store(cancelled, 0, 1) };
  }

  judge(photo: Uint8Array, reference: Uint8Array | null): Promise<PhotoJudgement> {
    return this.ask<PhotoJudgement>({ photo, reference });
  }

  private ask<T>(question: object, progress?: Progress): Promise<T> {
    const id = ++this.last;
    const done = new Promise<unknown>((resolve, reject) => this.waiting.set(id, { resolve, reject, progress }));
    clearTimeout(this.idle);
    const worker = this.started();
    worker.ref();
    worker.postMessage({ id, ...question });
    return done as Promise<T>;
  }

  async close(): Promise<void> {
    clearTimeout(this.idle);
    const worker = this.worker;
    this.worker = undefined;
    await worker?.terminate();
    this.failAll(new Error('the comparer was closed'));
  }

  private started(): Worker {
    if (this.worker) return this.worker;
    const worker = new Worker(new URL('./compare-job.js', import.meta.url));
    worker.on('message', (answer: Answer) => this.answered(answer));
    worker.on('error', (error: Error) => {
      if (this.worker === worker) this.worker = undefined;
      this.failAll(error);
    });
    return (this.worker = worker);
  }

  private answered(answer: Answer): void {
    const waiting = this.waiting.get(answer.id);
    if (!waiting) return;
    if ('step' in answer) return waiting.progress?.(answer.step, answer.share);
    this.waiting.delete(answer.id);
    if ('result' in answer) waiting.resolve(answer.result);
    else waiting.reject(new Error(answer.failure));
    if (this.waiting.size > 0) return;
    this.worker?.unref();
    this.idle = setTimeout(() => void this.close(), IDLE_MS).unref();
  }

  private failAll(error: Error): void {
    for (const { reject } of this.waiting.values()) reject(error);
    this.waiting.clear();
  }
}
