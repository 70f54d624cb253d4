import { spawn } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { openCompareDesk } from '../../bench/eyes/index.ts';
import { openBench } from '../../bench/open-bench.ts';
import { modelBundles, openBackupShelf, readBundle, writeBundle } from '../../edges/bundle/index.ts';
import type { Model } from '../../bench/models/index.ts';
import { openBoards } from '../../edges/boards/index.ts';
import { systemClock } from '../../edges/clock.ts';
import { openHome, type Home } from '../../edges/home.ts';
import { cachedModels } from '../../edges/models/cached-models.ts';
import { openPlanWorker } from '../../edges/planning/index.ts';
import { bucketIn, openBucketPhotoStore, openComparisonShelf, openPhotoComparer, openPhotoStore } from '../../edges/photos/index.ts';
import { openPrinter } from '../../edges/print/index.ts';
import { openPostgresStore } from '../../edges/store/postgres/postgres-store.ts';
import { openSqliteStore } from '../../edges/store/sqlite-store.ts';
import { openSharedBench, subjectsKept } from '../../bench/shared/index.ts';
import type { OpenedBench, SharedLog } from './cli-parts.ts';
import { runCli } from './run-cli.ts';

const ROOT = join(import.meta.dirname, '../../..');
const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string };
const clock = systemClock();

async function modelsOf(home: Home): Promise<ReadonlyMap<string, Model>> {
  const { models, problems } = await cachedModels([join(ROOT, 'models'), home.models], home.modelCache);
  for (const { file, line, field, message, next } of problems) console.error(`models/${file}:${line} ${field} ${message}. ${next}`);
  return models;
}

async function open(dir: string, compute: boolean): Promise<OpenedBench> {
  const home = openHome(dir);
  const models = await modelsOf(home);
  const store = openSqliteStore(home.database);
  const photos = openPhotoStore(home.photos);
  const boards = openBoards({ dir: home.boards, compute, log: console.error });
  const worker = openPlanWorker();
  const planning = { worker, log: console.error };
  const bench = openBench({ store, models, boards, planning, clock, device: home.device, version });
  const comparer = openPhotoComparer();
  const shelf = openComparisonShelf(home.comparisons);
  const eyes = openCompareDesk({ bench, photos, comparer, shelf, modelPhoto: (path) => readFile(path), version, log: console.error });
  const close = async (): Promise<void> => {
    await boards.close();
    await worker.close();
    await comparer.close();
    await photos.close();
    store.close();
  };
  return { bench, photos, backups: openBackupShelf(dir), boards, eyes, device: home.device, close };
}

async function openShared(dir: string, url: string): Promise<SharedLog> {
  const home = openHome(dir);
  const shared = await openPostgresStore(url, subjectsKept);
  const opened = await openSharedBench({ shared, models: await modelsOf(home), clock, device: home.device, version });
  return { ...opened, close: () => opened.close().then(shared.close) };
}

/** The server is a program of its own; it ends when it is told to, and then so does this one. */
function serve(args: readonly string[]): Promise<number> {
  const server = spawn(process.execPath, [join(import.meta.dirname, '../server/main.js'), ...args], { stdio: 'inherit' });
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.on(signal, () => server.kill(signal));
  return new Promise((resolve, reject) => {
    server.on('error', reject);
    server.on('close', (code) => resolve(code ?? 0));
  });
}

process.exitCode = await runCli(process.argv.slice(2), {
  open,
  openShared,
  openBucket: (address) => {
    const bucket = bucketIn(address);
    return bucket && openBucketPhotoStore(bucket, process.env);
  },
  bundle: { write: writeBundle, read: readBundle },
  modelBundles,
  printer: openPrinter(),
  clock,
  env: process.env,
  readFile: async (path, mostBytes) => ((await stat(path)).size > mostBytes ? 'too-large' : readFile(path)),
  writeFile,
  serve,
  version,
  out: console.log,
  err: console.error,
});
