import type { RecordResult } from '../bench.ts';

export type Work = () => RecordResult;
export type Worked = { readonly result: RecordResult } | { readonly error: unknown };

interface Turns {
  /** Resolves when all that was lasting at the time of the call is known here. */
  fresh(): Promise<void>;
  /** Resolves when the work is done and lasting. */
  write(work: Work): Promise<RecordResult>;
  /** Resolves when nothing is under way any more. */
  settled(): Promise<void>;
}

interface Waiting<T> {
  resolve(value: T): void;
  reject(error: unknown): void;
}

/**
 * One turn with the shared log after the other: all who wait when a turn begins are served by it together. A turn in which somebody writes reads on
 * too, so that whoever wanted to read is served by it as well.
 */
export function takeTurns(on: { read(): Promise<void>; write(works: readonly Work[]): Promise<Worked[]> }): Turns {
  let readers: Waiting<void>[] = [];
  let writers: (Waiting<RecordResult> & { readonly work: Work })[] = [];
  let underway: Promise<void> | null = null;

  const turn = async (): Promise<void> => {
    const [reading, writing] = [readers, writers];
    [readers, writers] = [[], []];
    try {
      const worked = writing.length > 0 ? await on.write(writing.map(({ work }) => work)) : await on.read();
      for (const [index, waiting] of writing.entries()) answer(waiting, worked![index]!);
      for (const { resolve } of reading) resolve();
    } catch (error) {
      for (const { reject } of [...writing, ...reading]) reject(error);
    }
  };
  const run = async (): Promise<void> => {
    while (readers.length + writers.length > 0) await turn();
    underway = null;
  };
  const start = (): void => void (underway ??= run());
  return {
    fresh: () =>
      new Promise((resolve, reject) => {
        readers.push({ resolve, reject });
        start();
      }),
    write: (work) =>
      new Promise((resolve, reject) => {
        writers.push({ work, resolve, reject });
        start();
      }),
    settled: async () => {
      await underway;
    },
  };
}

function answer(waiting: Waiting<RecordResult>, worked: Worked): void {
  if ('error' in worked) waiting.reject(worked.error);
  else waiting.resolve(worked.result);
}
