import { mkdtempSync, rmSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Network } from '../../src/apps/server/app-parts.ts';
import { createApp, type App } from '../../src/apps/server/app.ts';
import type { Bench } from '../../src/bench/bench.ts';
import type { BoardShelf } from '../../src/bench/boards/index.ts';
import { plainWorker } from '../../src/bench/plan/testing/plain-worker.ts';
import type { Clock, DeviceBook } from '../../src/bench/ports.ts';
import { openCompareDesk } from '../../src/bench/eyes/index.ts';
import { finding, ScriptedComparer, squareAt } from '../../src/bench/eyes/testing/scripted-comparer.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { modelBundles, openBackupShelf, readBundle, writeBundle } from '../../src/edges/bundle/index.ts';
import { ownDoor } from '../../src/bench/shared/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openDeviceBook } from '../../src/edges/devices/index.ts';
import { openHome } from '../../src/edges/home.ts';
import { openOwnQueue } from '../../src/edges/jobs/index.ts';
import { openInstruments } from '../../src/edges/instruments/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { openComparisonShelf, openPhotoStore } from '../../src/edges/photos/index.ts';
import { outlinesOnPhoto } from '../../src/edges/photos/outlines-on-photo.ts';
import { openPrinter } from '../../src/edges/print/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';

/** The network as a phone would see it, though nothing listens there. */
export const NETWORK: Network = { urls: ['https://192.0.2.7:4781/'], hosts: new Set(['192.0.2.7']), fingerprint: 'AB:CD' };

export interface OpenedApp {
  readonly app: App;
  readonly bench: Bench;
  readonly devices: DeviceBook;
  readonly logged: string[];
  /** Asks as a program on this machine does; a plain object goes as JSON. */
  ask(path: string, body?: unknown): Promise<Response>;
  close(): Promise<void>;
}

/** The server over a real store, real photos and the models that ship, on an empty bench in a folder of its own. */
export async function openApp(parts: { webDir?: string; boards?: BoardShelf; clock?: Clock } = {}): Promise<OpenedApp> {
  const logged: string[] = [];
  const dir = mkdtempSync(join(tmpdir(), 'salvor-interface-'));
  const home = openHome(dir);
  const store = openSqliteStore(home.database);
  const photos = openPhotoStore(home.photos);
  const planning = { worker: plainWorker(), log: (sentence: string) => void logged.push(sentence) };
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  const clock = parts.clock ?? systemClock();
  const devices = openDeviceBook(home.devices, clock);
  const bench = openBench({ store, models, planning, clock, device: home.device, version: '0.0.0' });
  const comparer = new ScriptedComparer(() => finding(squareAt(300, 300)));
  const shelf = openComparisonShelf(home.comparisons);
  const log = (sentence: string): void => void logged.push(sentence);
  const eyes = openCompareDesk({ bench, photos, comparer, shelf, modelPhoto: (path) => readFile(path), version: '0.0.0', log });
  const app = createApp({
    bench,
    door: ownDoor(bench),
    jobs: openOwnQueue(() => clock.now()),
    errors: () => [],
    clock,
    devices,
    network: () => NETWORK,
    backups: openBackupShelf(dir),
    photos,
    printer: openPrinter(),
    instruments: openInstruments(),
    eyes,
    ...(parts.boards ? { boards: parts.boards } : {}),
    outlines: {
      propose: (photo, question) => ({ done: outlinesOnPhoto(photo, question), cancel: () => undefined }),
      close: async () => undefined,
    },
    bundle: { write: writeBundle, read: readBundle },
    modelBundles,
    webDir: parts.webDir ?? null,
    version: '0.0.0',
    home: dir,
    log: (sentence, error) => void logged.push(`${sentence}: ${String(error)}`),
  });
  const close = async (): Promise<void> => {
    app.close();
    await photos.close();
    devices.close();
    store.close();
    rmSync(dir, { recursive: true, force: true });
  };
  return { app, bench, devices, logged, ask: async (path, body) => app.request(`http://127.0.0.1:4780${path}`, requestOf(body)), close };
}

function requestOf(body: unknown): RequestInit {
  if (body === undefined) return {};
  if (body instanceof FormData || body instanceof Uint8Array) return { method: 'POST', body: body as BodyInit };
  return { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}
