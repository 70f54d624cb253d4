import { mkdtempSync, rmSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { OpenedBench } from '../../src/apps/cli/cli-parts.ts';
import { openCompareDesk } from '../../src/bench/eyes/index.ts';
import { runCli } from '../../src/apps/cli/run-cli.ts';
import { plainWorker } from '../../src/bench/plan/testing/plain-worker.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { openBackupShelf, modelBundles, readBundle, writeBundle } from '../../src/edges/bundle/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openHome } from '../../src/edges/home.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { openComparisonShelf, openPhotoComparer, openPhotoStore } from '../../src/edges/photos/index.ts';
import { openPrinter } from '../../src/edges/print/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';
import { ROOT } from './pages.ts';

export interface Ran {
  readonly exitCode: number;
  /** Both streams, as a terminal shows them. */
  readonly output: string;
}

/** A command line as a reader of the docs has it: an empty bench in a folder of its own, the models that ship, a real store. */
export async function openCommandLine(): Promise<{ run(text: string): Promise<Ran>; close(): void }> {
  const dir = mkdtempSync(join(tmpdir(), 'salvor-docs-'));
  const { models } = await loadModels(join(ROOT, 'models'));
  const clock = systemClock();
  const planning = { worker: plainWorker(), log: console.error };
  const open = async (folder: string): Promise<OpenedBench> => {
    const home = openHome(folder);
    const store = openSqliteStore(home.database);
    const photos = openPhotoStore(home.photos);
    const bench = openBench({ store, models, planning, clock, device: home.device, version: '0.0.0' });
    const comparer = openPhotoComparer();
    const modelPhoto = (path: string): Promise<Uint8Array> => readFile(path);
    const shelf = openComparisonShelf(home.comparisons);
    const eyes = openCompareDesk({ bench, photos, comparer, shelf, modelPhoto, version: '0.0.0', log: console.error });
    const close = async (): Promise<void> => {
      await photos.close();
      store.close();
    };
    return { bench, photos, backups: openBackupShelf(folder), eyes, device: home.device, close };
  };
  const run = async (text: string): Promise<Ran> => {
    const said: string[] = [];
    const [program, ...argv] = wordsOf(text);
    if (program !== 'salvor') throw new Error(`"${text}" is not a command of salvor`);
    const exitCode = await runCli(argv, {
      open,
      openBucket: () => null,
      openShared: () => Promise.reject(new Error('examples have no database')),
      bundle: { write: writeBundle, read: readBundle },
      modelBundles,
      printer: openPrinter(),
      clock,
      env: { SALVOR_HOME: join(dir, 'bench') },
      readFile: (path) => readFile(resolve(dir, path)),
      writeFile: (path, bytes) => writeFile(resolve(dir, path), bytes),
      serve: async () => 0,
      version: '0.0.0',
      out: (line) => void said.push(line),
      err: (line) => void said.push(line),
    });
    return { exitCode, output: said.join('\n') };
  };
  return { run, close: () => rmSync(dir, { recursive: true, force: true }) };
}

/** A line as a shell splits it: words, quoted words, and a backslash at the end of a line. No variables, pipes or globs. */
export const wordsOf = (text: string): string[] =>
  (text.replaceAll(/\\\n/g, ' ').match(/(?:"[^"]*"|'[^']*'|[^\s"']+)+/g) ?? []).map((word) =>
    word.replaceAll(/"([^"]*)"|'([^']*)'/g, '$1$2'),
  );
