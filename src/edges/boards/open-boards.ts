import { setImmediate, setTimeout } from 'node:timers/promises';
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
import { WorkerRun } from './worker-run.ts';

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
  /** As it was last asked with. */
  model: Model;
  readonly confirmed: readonly string[];
  readonly grown: GrownKnowledge;
  stage: BoardProgress['stage'];
}

/** Dictionaries that are in memory at once, besides those that wait; some 40 MB each. */
const MOST = 8;
/** How often it is looked whether all is known, ms. */
const LOOK_MS = 20;

/**
 * What circuits say of boards, computed in a worker thread, one dictionary at a time, the last one asked for first; finished ones are kept in a folder. Nothing here
 * waits: an answer is what is known by now. A worker that fails is logged, and its model stays at what is known until `go`.
 */
export function openBoards(options: BoardOptions): BoardShelf {
  return new ShelfOfBoards(options);
}

class ShelfOfBoards implements BoardShelf {
  private readonly entries = new Map<string, Entry>();
  private readonly keys = new Map<string, string>();
  private readonly files: BoardFiles;
  private readonly watchers = new Set<() => void>();
  private run: WorkerRun | undefined;
  private busy = false;
  private working: Promise<void> = Promise.resolve();
  private isStopped = false;
  private isClosed = false;
  /** The present run is being ended by us, so its end is no failure. */
  private isEnding = false;

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

  /** The timer keeps a program alive that has nothing else to do than to wait. */
  async settled(model: Model): Promise<BoardProgress | null> {
    if (!model.circuit || !model.file.circuit) return null;
    const entry = this.entryOf(model, []);
    while (!this.isClosed && isUnderWay(entry)) await setTimeout(LOOK_MS);
    return progressOf(entry);
  }

  watch(tell: () => void): () => void {
    this.watchers.add(tell);
    return () => void this.watchers.delete(tell);
  }

  stop(): void {
    this.isStopped = true;
    void this.endRun();
  }

  go(): void {
    this.isStopped = false;
    for (const entry of this.entries.values()) if (entry.stage === 'stopped' || entry.stage === 'failed') entry.stage = 'waiting';
    this.work();
  }

  async close(): Promise<void> {
    this.isClosed = true;
    this.watchers.clear();
    await this.endRun();
    await this.working;
  }

  private async endRun(): Promise<void> {
    this.isEnding = true;
    await this.run?.end();
  }

  private entryOf(model: Model, confirmed: readonly string[]): Entry {
    const question = JSON.stringify([model.file.id, model.wet ?? [], [...confirmed].sort()]);
    const known = this.entries.get(this.keys.get(question) ?? '');
    if (known && known.model.circuit === model.circuit) return this.used(known);
    const task = boardTask(model, confirmed);
    const hash = boardHash(task);
    this.keys.set(question, hash);
    const same = this.entries.get(hash);
    if (same) {
      same.model = model;
      return this.used(same);
    }
    const entry: Entry = { model, confirmed, grown: new GrownKnowledge(task, hash, simulatedPairs(task)), stage: 'waiting' };
    this.entries.set(hash, entry);
    this.forget();
    this.work();
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
    const settled = [...this.entries.values()].filter((entry) => !isUnderWay(entry));
    for (const { grown } of settled.slice(0, Math.max(0, settled.length - MOST))) this.entries.delete(grown.hash);
    for (const [question, hash] of this.keys) if (!this.entries.has(hash)) this.keys.delete(question);
  }

  private work(): void {
    if (!this.busy) this.working = this.workOff();
  }

  /** Does what waits, one after another, the last one asked for first. */
  private async workOff(): Promise<void> {
    this.busy = true;
    for (;;) {
      const next = [...this.entries.values()].findLast(({ stage }) => stage === 'waiting');
      if (!next || this.isClosed) break;
      next.stage = 'computing';
      await this.fill(next).catch((error: unknown) => this.fail(next, error));
      this.forget();
    }
    this.busy = false;
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
      return this.tell();
    }
    await this.compute(entry);
    if (isComplete(entry) && !this.isClosed) await this.files.write(hash, entry.grown.all());
  }

  /** Gives way to every request between two slices. */
  private async takeSlices(entry: Entry, rows: BoardRows): Promise<void> {
    for (const slice of slicesOf(entry.grown.task, rows)) {
      await setImmediate();
      if (this.isClosed) return;
      entry.grown.take(slice);
    }
  }

  /** Goes on where an earlier run was ended. */
  private async compute(entry: Entry): Promise<void> {
    const { model, confirmed, grown } = entry;
    this.isEnding = false;
    this.run = new WorkerRun(
      this.options.worker ?? new URL('./compute.mjs', import.meta.url),
      { model, confirmed, first: grown.done },
      (rows) => {
        if (this.isClosed) return;
        grown.take(rows);
        this.tell();
      },
    );
    const { error } = await this.run.over;
    this.run = undefined;
    if (isComplete(entry)) entry.stage = 'ready';
    else if (error !== undefined || !this.isEnding) return this.fail(entry, error ?? new Error('the worker thread ended too early'));
    else entry.stage = this.isStopped ? 'stopped' : 'waiting';
    this.tell();
  }

  private fail(entry: Entry, error: unknown): void {
    entry.stage = 'failed';
    this.options.log(`What the circuit of ${entry.model.file.id} says could not be computed; its advice goes by what is known.`, error);
    this.tell();
  }

  private tell(): void {
    for (const tell of this.watchers) tell();
  }
}

const isUnderWay = ({ stage }: Entry): boolean => stage === 'waiting' || stage === 'computing';
const isComplete = ({ grown }: Entry): boolean => grown.done >= grown.rows;

const progressOf = ({ model, confirmed, grown, stage }: Entry): BoardProgress => ({
  modelId: model.file.id,
  confirmed,
  done: grown.done,
  rows: grown.rows,
  stage,
});
