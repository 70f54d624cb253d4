import { setImmediate, setTimeout } from 'node:timers/promises';
import { Worker } from 'node:worker_threads';
import {
  DRAWS,
  GrownKnowledge,
  boardTask,
  simulatedPairs,
  slicesOf,
  type BoardProgress,
  type BoardRows,
  type BoardShelf,
} from '../../bench/boards/index.ts';
import type { Model } from '../../bench/models/index.ts';
import { BoardFiles } from './board-files.ts';
import { boardHash } from './board-hash.ts';

export interface BoardOptions {
  /** Folder of finished dictionaries. */
  readonly dir: string;
  /** False: what is not finished yet is not begun; for programs that end soon. */
  readonly compute: boolean;
  /** The program of the worker; the built one beside this file by default. */
  readonly worker?: URL;
  /** Told what went wrong in a worker. */
  readonly log: (sentence: string, error: unknown) => void;
}

interface Entry {
  readonly model: Model;
  readonly confirmed: readonly string[];
  readonly grown: GrownKnowledge;
  stage: BoardProgress['stage'];
}

/** Dictionaries that are in memory at once; some 40 MB each. */
const MOST = 8;

/**
 * What circuits say of boards, computed in a worker thread, one dictionary at a time, the last one asked for first; finished ones are kept in a folder. Nothing here
 * waits: an answer is what is known by now. A worker that fails is logged, and its model stays at what is known.
 */
export function openBoards(options: BoardOptions): BoardShelf {
  return new ShelfOfBoards(options);
}

class ShelfOfBoards implements BoardShelf {
  private readonly entries = new Map<string, Entry>();
  private readonly keys = new Map<string, string>();
  private readonly files: BoardFiles;
  private readonly watchers = new Set<() => void>();
  private worker: Worker | undefined;
  private busy = false;
  private isStopped = false;
  private isClosed = false;

  constructor(private readonly options: BoardOptions) {
    this.files = new BoardFiles(options.dir);
  }

  knowledge(model: Model, confirmed: readonly string[]): ReturnType<BoardShelf['knowledge']> {
    if (!model.circuit || !model.file.circuit) return null;
    return this.entryOf(model, confirmed).grown.knowledge();
  }

  progress(): BoardProgress[] {
    return [...this.entries.values()].map(progressOf);
  }

  async settled(model: Model): Promise<BoardProgress | null> {
    if (!model.circuit || !model.file.circuit) return null;
    const entry = this.entryOf(model, []);
    while (!this.isClosed && (entry.stage === 'waiting' || entry.stage === 'computing')) await setTimeout(20);
    return progressOf(entry);
  }

  watch(tell: () => void): () => void {
    this.watchers.add(tell);
    return () => void this.watchers.delete(tell);
  }

  stop(): void {
    this.isStopped = true;
    void this.worker?.terminate();
  }

  go(): void {
    this.isStopped = false;
    for (const entry of this.entries.values()) if (entry.stage === 'stopped') entry.stage = 'waiting';
    void this.work();
  }

  async close(): Promise<void> {
    this.isClosed = true;
    this.watchers.clear();
    await this.worker?.terminate();
  }

  private entryOf(model: Model, confirmed: readonly string[]): Entry {
    const question = JSON.stringify([model.file.id, model.wet ?? [], [...confirmed].sort()]);
    const known = this.entries.get(this.keys.get(question) ?? '');
    if (known && known.model.circuit === model.circuit) return this.used(known);
    const task = boardTask(model, confirmed);
    const hash = boardHash(task);
    const entry: Entry = { model, confirmed, grown: new GrownKnowledge(task, hash, simulatedPairs(task)), stage: 'waiting' };
    this.entries.set(hash, entry);
    this.keys.set(question, hash);
    this.forget();
    void this.work();
    return entry;
  }

  /** Moves an entry to the end: what was used last is forgotten last. */
  private used(entry: Entry): Entry {
    const { hash } = entry.grown;
    this.entries.delete(hash);
    this.entries.set(hash, entry);
    return entry;
  }

  private forget(): void {
    for (const [hash, { stage }] of this.entries) {
      if (this.entries.size <= MOST) return;
      if (stage !== 'computing') this.entries.delete(hash);
    }
  }

  /** Does what waits, one after another, the last one asked for first. */
  private async work(): Promise<void> {
    if (this.busy) return;
    this.busy = true;
    try {
      for (;;) {
        const next = [...this.entries.values()].findLast(({ stage }) => stage === 'waiting');
        if (!next || this.isClosed || this.isStopped) return;
        next.stage = 'computing';
        await this.fill(next);
      }
    } finally {
      this.busy = false;
    }
  }

  private async fill(entry: Entry): Promise<void> {
    const { task, hash, rows } = entry.grown;
    const kept = await this.files.read(hash, rows * DRAWS * task.points.length, rows * DRAWS * task.functions.length);
    if (kept) {
      await this.takeSlices(entry, { from: 0, count: rows, ...kept });
      entry.stage = 'ready';
      return this.tell();
    }
    if (!this.options.compute || this.isStopped || this.isClosed) {
      entry.stage = 'stopped';
      return;
    }
    await this.compute(entry);
    if (entry.stage === 'ready' && !this.isClosed) await this.files.write(hash, entry.grown.all());
  }

  /** Gives way to every request between two slices. */
  private async takeSlices(entry: Entry, rows: BoardRows): Promise<void> {
    for (const slice of slicesOf(entry.grown.task, rows)) {
      await setImmediate();
      if (this.isClosed) return;
      entry.grown.take(slice);
    }
  }

  private compute(entry: Entry): Promise<void> {
    const { model, confirmed } = entry;
    const plain = { file: model.file, circuit: model.circuit, wet: model.wet ?? [], readings: [], photos: [] };
    const worker = new Worker(this.options.worker ?? new URL('./compute.mjs', import.meta.url), {
      workerData: { model: plain, confirmed },
      execArgv: [],
    });
    this.worker = worker;
    worker.unref();
    return new Promise((resolve) => {
      worker.on('message', (rows: BoardRows) => {
        if (this.isClosed) return;
        entry.grown.take(rows);
        this.tell();
      });
      worker.on('error', (error) => {
        entry.stage = 'failed';
        this.options.log(`What the circuit of ${model.file.id} says could not be computed; its advice goes by the model file.`, error);
      });
      worker.on('exit', () => {
        const done = entry.grown.knowledge()?.done ?? 0;
        if (entry.stage === 'computing') entry.stage = done >= entry.grown.rows ? 'ready' : 'stopped';
        this.worker = undefined;
        this.tell();
        resolve();
      });
    });
  }

  private tell(): void {
    for (const tell of this.watchers) tell();
  }
}

const progressOf = ({ model, confirmed, grown, stage }: Entry): BoardProgress => ({
  modelId: model.file.id,
  confirmed,
  done: grown.knowledge()?.done ?? 0,
  rows: grown.rows,
  stage,
});
