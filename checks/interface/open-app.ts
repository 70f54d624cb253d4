import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createApp, type App } from '../../src/apps/server/app.ts';
import type { Bench } from '../../src/bench/bench.ts';
import type { BoardShelf } from '../../src/bench/boards/index.ts';
import { plainWorker } from '../../src/bench/plan/testing/plain-worker.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { readBundle, writeBundle } from '../../src/edges/bundle/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openHome } from '../../src/edges/home.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { openPhotoStore } from '../../src/edges/photos/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';

export interface OpenedApp {
  readonly app: App;
  readonly bench: Bench;
  readonly logged: string[];
  /** Asks as a program on this machine does; a plain object goes as JSON. */
  ask(path: string, body?: unknown): Promise<Response>;
  close(): Promise<void>;
}

/** The server over a real store, real photos and the models that ship, on an empty bench in a folder of its own. */
export async function openApp(parts: { webDir?: string; boards?: BoardShelf } = {}): Promise<OpenedApp> {
  const logged: string[] = [];
  const dir = mkdtempSync(join(tmpdir(), 'salvor-interface-'));
  const home = openHome(dir);
  const store = openSqliteStore(home.database);
  const photos = openPhotoStore(home.photos);
  const planning = { worker: plainWorker(), log: (sentence: string) => void logged.push(sentence) };
  const { models } = await loadModels(join(import.meta.dirname, '../../models'));
  const bench = openBench({ store, models, planning, clock: systemClock(), device: home.device, version: '0.0.0' });
  const app = createApp({
    bench,
    photos,
    models,
    ...(parts.boards ? { boards: parts.boards } : {}),
    bundle: { write: writeBundle, read: readBundle },
    webDir: parts.webDir ?? null,
    version: '0.0.0',
    home: dir,
    log: (sentence, error) => void logged.push(`${sentence}: ${String(error)}`),
  });
  const close = async (): Promise<void> => {
    app.close();
    await photos.close();
    store.close();
    rmSync(dir, { recursive: true, force: true });
  };
  return { app, bench, logged, ask: async (path, body) => app.request(`http://127.0.0.1:4780${path}`, requestOf(body)), close };
}

function requestOf(body: unknown): RequestInit {
  if (body === undefined) return {};
  if (body instanceof FormData || body instanceof Uint8Array) return { method: 'POST', body: body as BodyInit };
  return { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) };
}
