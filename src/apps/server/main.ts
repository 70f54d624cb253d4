import { existsSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { destination, pino, stdTimeFunctions } from 'pino';
import type { BenchDoor, BenchParts, BenchViews } from '../../bench/bench.ts';
import { openCompareDesk } from '../../bench/eyes/index.ts';
import { openBench } from '../../bench/open-bench.ts';
import { openSharedBench, ownDoor, subjectsKept } from '../../bench/shared/index.ts';
import { takeBundle } from '../../bench/take-bundle.ts';
import { problemFor, problemOfStore, problemOfTaking } from '../../bench/words.ts';
import { modelBundles, openBackupShelf, readBundle, readFolder, writeBundle } from '../../edges/bundle/index.ts';
import { openBoards } from '../../edges/boards/index.ts';
import { openDeviceBook } from '../../edges/devices/index.ts';
import { systemClock } from '../../edges/clock.ts';
import type { PhotoStore } from '../../bench/ports.ts';
import type { SharedStore } from '../../bench/ports-shared.ts';
import { queuedPlans } from '../../bench/plan/queued-plans.ts';
import { openHome } from '../../edges/home.ts';
import { ensureCertificate, ownNames } from '../../edges/lan/index.ts';
import { openBossQueue, openOwnQueue } from '../../edges/jobs/index.ts';
import { openInstruments } from '../../edges/instruments/index.ts';
import { cachedModels } from '../../edges/models/cached-models.ts';
import { openPlanWorker } from '../../edges/planning/index.ts';
import {
  bucketIn,
  openBucketPhotoStore,
  openComparisonShelf,
  openOutlineFinder,
  openPhotoComparer,
  openPhotoStore,
} from '../../edges/photos/index.ts';
import { openPrinter } from '../../edges/print/index.ts';
import { openPostgresStore } from '../../edges/store/postgres/postgres-store.ts';
import { openSqliteStore } from '../../edges/store/sqlite-store.ts';
import { createApp, type App } from './app.ts';
import type { AppParts, Network } from './app-parts.ts';
import { serverArguments, USAGE, type ServerArguments } from './arguments.ts';
import { openJournal } from './journal.ts';
import { listen, listenToNetwork, type Listening } from './listen.ts';
import { doorWords, networkAt } from './network-door.ts';
import { backUpNightly } from './nightly-backup.ts';
import { openBrowser } from './open-browser.ts';
import { askJson, portTaken } from './port-taken.ts';
import { planAhead } from './plan-ahead.ts';
import { thinkAhead } from './think-ahead.ts';

const ROOT = join(import.meta.dirname, '../../..');

/** Opens the bench of a folder, serves it, and ends cleanly when it is asked to. */
async function main(): Promise<void> {
  const parsed = serverArguments(process.argv.slice(2), process.env);
  if (!parsed.ok) return end(2, parsed.message);
  if (parsed.args.help) return console.log(USAGE);
  const opened = await open(parsed.args).catch((error: unknown) => error);
  if (opened instanceof Error)
    return end(3, (problemOfStore(opened) ?? problemFor('store-trouble', { where: parsed.args.home, detail: opened.message })).message);
  await serve(opened as Opened, parsed.args);
}

interface Opened extends AppParts {
  /** Says how the network reaches the bench from now on. */
  openTo(network: Network): void;
  close(): Promise<void>;
}

async function open({ home: dir, database, photos: bucket }: ServerArguments): Promise<Opened> {
  const home = openHome(dir);
  const clock = systemClock();
  const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string };
  const { models, problems } = await cachedModels([join(ROOT, 'models'), home.models], home.modelCache);
  for (const { file, line, field, message, next } of problems) console.error(`models/${file}:${line} ${field} ${message}. ${next}`);
  const photos = photosAt(bucket, home.photos);
  const { log, errors } = openJournal(writeLine(), clock.now);
  const boards = openBoards({ dir: home.boards, compute: true, log });
  const devices = openDeviceBook(home.devices, clock);
  let network: Network | null = null;
  const worker = openPlanWorker();
  const shared = database === null ? null : await openPostgresStore(database, subjectsKept);
  const jobs = database === null ? openOwnQueue(clock.now) : await openBossQueue(database, log);
  const planning = { worker: await queuedPlans(jobs, worker), log };
  const benchParts = { models, boards, planning, clock, device: home.device, version };
  const { bench, door, close } = shared === null ? openOwn(home.database, benchParts) : await openShared(shared, benchParts);
  const outlines = openOutlineFinder();
  const comparer = openPhotoComparer();
  const shelf = openComparisonShelf(home.comparisons);
  const eyes = openCompareDesk({ bench, photos, comparer, shelf, modelPhoto: (path) => readFile(path), version, log });
  return {
    bench,
    door,
    jobs,
    errors,
    clock,
    devices,
    network: () => network,
    openTo: (opened) => void (network = opened),
    backups: openBackupShelf(dir),
    photos,
    printer: openPrinter(),
    instruments: openInstruments(),
    version,
    home: dir,
    bundle: { write: writeBundle, read: readBundle },
    modelBundles,
    webDir: join(ROOT, 'dist/web'),
    boards,
    eyes,
    outlines,
    log,
    close: async () => {
      await boards.close();
      await jobs.close();
      await worker.close();
      await comparer.close();
      await outlines.close();
      await photos.close();
      devices.close();
      await close();
    },
  };
}

/** One line of JSON for each trouble, on the standard error. */
function writeLine(): Parameters<typeof openJournal>[0] {
  const lines = pino({ base: null, timestamp: stdTimeFunctions.isoTime, formatters: { level: (level) => ({ level }) } }, destination(2));
  return (fields, sentence) => lines.error(fields, sentence);
}

function photosAt(address: string | null, folder: string): PhotoStore {
  if (address === null) return openPhotoStore(folder);
  const bucket = bucketIn(address);
  if (!bucket) throw new Error(`"${address}" is not the address of a bucket such as s3://workshop/photos`);
  return openBucketPhotoStore(bucket, process.env);
}

interface OpenedBench {
  readonly bench: BenchViews;
  readonly door: BenchDoor;
  close(): Promise<void>;
}

function openOwn(file: string, parts: Omit<BenchParts, 'store'>): OpenedBench {
  const store = openSqliteStore(file);
  const bench = openBench({ ...parts, store });
  return { bench, door: ownDoor(bench), close: async () => store.close() };
}

async function openShared(shared: SharedStore, parts: Omit<BenchParts, 'store'>): Promise<OpenedBench> {
  const { bench, door, close } = await openSharedBench({ ...parts, shared });
  return {
    bench,
    door,
    close: async () => {
      await close();
      await shared.close();
    },
  };
}

async function serve(opened: Opened, { home, port, lanPort, empty, open: isToOpen }: ServerArguments): Promise<void> {
  const app = createApp(opened);
  const listening = await listen(app.fetch, port);
  if (listening === 'port-taken') {
    await opened.close();
    const { isSame, sentence, url } = await portTaken(port, home, askJson);
    if (isSame && isToOpen) openBrowser(url);
    return isSame ? console.log(sentence) : end(1, sentence);
  }
  const url = `http://127.0.0.1:${listening.port}/`;
  const door = lanPort === null ? null : await openDoor(app, opened, lanPort);
  let isOver = false;
  const nightly = backUpNightly(opened);
  endOnSignal(async () => {
    isOver = true;
    await nightly.stop();
    app.close();
    await Promise.all([listening.close(), door?.close()]);
    await opened.close();
  });
  if (!empty) await loadDemo(opened);
  console.log(`Salvor is ready at ${url}`);
  if (isToOpen) openBrowser(url);
  await thinkAhead(opened, () => isOver).catch((error: unknown) =>
    opened.log('Units could not be thought over ahead of questions.', error),
  );
  thinkAgain(opened, () => isOver);
  planAhead(opened, () => isOver);
}

/** Lets the network in; null, with the reason said, when the port is taken. The bench goes on for this machine. */
async function openDoor(app: App, { home, clock, openTo }: Opened, port: number): Promise<Listening | null> {
  const own = ownNames();
  const certificate = await ensureCertificate(join(home, 'lan'), own, clock.now());
  const listening = await listenToNetwork(app.network.fetch, port, certificate);
  if (listening === 'port-taken') {
    console.error(`Port ${port} is in use by another program, so no other device can reach the bench. Start it with another --lan-port.`);
    return null;
  }
  const network = networkAt(listening.port, own, certificate.fingerprint);
  openTo(network);
  console.log(doorWords(network, certificate.isNew));
  return listening;
}

/** Once circuits are known, what they change in the advice is thought over before somebody asks. */
function thinkAgain(opened: Opened, isOver: () => boolean): void {
  const { boards, log } = opened;
  boards?.watch(() => {
    if (boards.progress().some(({ stage }) => stage === 'waiting' || stage === 'computing')) return;
    thinkAhead(opened, isOver).catch((error: unknown) => log('What circuits say could not be thought over ahead of questions.', error));
  });
}

/** The demo goes into an empty bench only; one that was put away is not empty. */
async function loadDemo({ bench, door, photos }: Opened): Promise<void> {
  const folder = join(ROOT, 'demo');
  if (bench.overview().events > 0 || !existsSync(join(folder, 'events.jsonl'))) return;
  console.log('Loading the demo bench …');
  const read = await readFolder(folder);
  if (!read.ok) return console.error(problemFor('bad-bundle', { where: folder, detail: read.detail }).message);
  const taken = await takeBundle({ overview: bench.overview, adopt: door.adopt }, photos, read);
  if (!taken.ok && taken.code !== 'not-empty' && taken.code !== 'bench-not-empty')
    console.error(problemOfTaking(taken, read.events.length).message);
}

function endOnSignal(close: () => Promise<void>): void {
  let isEnding = false;
  for (const signal of ['SIGINT', 'SIGTERM'] as const)
    process.on(signal, () => {
      if (isEnding) return;
      isEnding = true;
      void close().then(() => process.exit(0));
    });
}

function end(code: number, sentence: string): void {
  console.error(sentence);
  process.exitCode = code;
}

await main();
