import { Worker } from 'node:worker_threads';
import type { BoardRows } from '../../bench/boards/index.ts';
import type { Model } from '../../bench/models/index.ts';

/** What a worker is to compute: rows of one dictionary, from `first` on. */
export interface WorkerTask {
  readonly model: Model;
  readonly confirmed: readonly string[];
  readonly first: number;
}

/** A worker thread at one dictionary. It does not keep the program alive. */
export class WorkerRun {
  private readonly worker: Worker;
  /** Fulfilled when the thread has ended, with what went wrong in it, if anything did. */
  readonly over: Promise<{ readonly error: unknown }>;

  /** `take` gets the rows in order. Throws where no thread can be started. */
  constructor(program: URL, { model, confirmed, first }: WorkerTask, take: (rows: BoardRows) => void) {
    const plain = { file: model.file, circuit: model.circuit, wet: model.wet ?? [], readings: [], photos: [] };
    this.worker = new Worker(program, { workerData: { model: plain, confirmed, first }, execArgv: [] });
    this.worker.unref();
    let wrong: unknown;
    this.worker.on('message', take);
    this.worker.on('error', (error) => (wrong = error));
    this.over = new Promise((resolve) => this.worker.on('exit', () => resolve({ error: wrong })));
  }

  async end(): Promise<void> {
    await this.worker.terminate();
  }
}
