import { createHash } from 'node:crypto';
import { ModelBundle, type AnyEvent } from '../../../bench/events/index.ts';
import { openCompareDesk } from '../../../bench/eyes/index.ts';
import { memoryShelf } from '../../../bench/eyes/testing/memory-shelf.ts';
import { finding, ScriptedComparer, squareAt } from '../../../bench/eyes/testing/scripted-comparer.ts';
import { openBench } from '../../../bench/open-bench.ts';
import { plainWorker } from '../../../bench/plan/testing/plain-worker.ts';
import { memoryBackups } from '../../../bench/testing/memory-backups.ts';
import type { EventStore, PhotoStore, StoredPhoto } from '../../../bench/ports.ts';
import type { SharedStore } from '../../../bench/ports-shared.ts';
import { openSharedBench } from '../../../bench/shared/index.ts';
import { sharedMemoryStore } from '../../../bench/testing/shared-store.ts';
import { memoryStore } from '../../../bench/testing/memory-store.ts';
import { smallModels } from '../../../bench/testing/small-model.ts';
import type { CliParts } from '../cli-parts.ts';
import { runCli } from '../run-cli.ts';

/** Photos by content, in memory; what does not begin with "picture" is refused. */
function memoryPhotos(): PhotoStore {
  const kept = new Map<string, { readonly photo: StoredPhoto; readonly bytes: Uint8Array }>();
  return {
    put: async (name, bytes) => {
      if (!Buffer.from(bytes).toString().startsWith('picture'))
        return { ok: false, code: 'photo-not-a-picture', name, detail: 'it is text' };
      const hash = createHash('sha256').update(bytes).digest('hex');
      const photo = { hash, mediaType: 'image/png', widthPx: 1, heightPx: 1, bytes: bytes.length, takenAt: null };
      const duplicate = kept.has(hash);
      kept.set(hash, { photo, bytes });
      return { ok: true, photo, duplicate };
    },
    get: async (hash) => {
      const found = kept.get(hash);
      return found ? { bytes: found.bytes, mediaType: found.photo.mediaType } : null;
    },
    list: async () => [...kept.values()].map(({ photo }) => photo),
    close: async () => undefined,
  };
}

/** A command line whose bench lives in memory and outlasts single commands; the clock counts minutes. */
export function commandLine(): {
  salvor: (...argv: string[]) => Promise<Run>;
  files: Map<string, Uint8Array>;
  stores: Map<string, EventStore>;
  parts: CliParts;
} {
  const stores = new Map<string, EventStore>();
  const databases = new Map<string, SharedStore>();
  const [photos, bucket] = [memoryPhotos(), memoryPhotos()];
  const backups = memoryBackups();
  const comparer = new ScriptedComparer(() => finding(squareAt(100, 100), squareAt(300, 100, { kind: 'stain', chance: 0.2 })));
  const shelf = memoryShelf();
  const files = new Map<string, Uint8Array>();
  let count = 0;
  const clock = {
    now: () => new Date(Date.UTC(2026, 4, 1, 9, count)),
    newId: () => `019f0000-0000-7000-8000-${String((count += 1)).padStart(12, '0')}`,
  };
  const planning = { worker: plainWorker(), log: () => undefined };
  const parts: CliParts = {
    open: async (home) => {
      if (home.endsWith('locked')) throw new Error('permission denied');
      const store = stores.get(home) ?? memoryStore();
      stores.set(home, store);
      const bench = openBench({ store, models: smallModels(), planning, clock, device: 'bench-1', version: '0' });
      const eyes = openCompareDesk({
        bench,
        photos,
        comparer,
        shelf,
        modelPhoto: async () => new Uint8Array(),
        version: '0',
        log: () => undefined,
      });
      return { bench, photos, backups, eyes, device: 'bench-1', close: async () => undefined };
    },
    modelBundles: {
      write: async (bundle) => Buffer.from(JSON.stringify(bundle)),
      read: async (bytes) => ({ ok: true, bundle: ModelBundle.parse(JSON.parse(Buffer.from(bytes).toString())), photos: [] }),
    },
    openBucket: (address) => (address === 's3://workshop' ? bucket : null),
    openShared: async (_home, url) => {
      const shared = databases.get(url) ?? sharedMemoryStore();
      databases.set(url, shared);
      return openSharedBench({ shared, models: smallModels(), clock, device: 'bench-1', version: '0' });
    },
    bundle: {
      write: async (events) => Buffer.from(JSON.stringify(events)),
      read: async (bytes) => {
        const text = Buffer.from(bytes).toString();
        if (!text.startsWith('[')) return { ok: false, code: 'bundle-not-a-zip', detail: 'it is not a bundle' };
        return { ok: true, events: JSON.parse(text) as AnyEvent[], photos: [] };
      },
    },
    printer: {
      mat: async ({ paper, pages }) => new TextEncoder().encode(`%PDF ${paper}, ${pages.length} page(s)`),
      labels: async (labels) => Buffer.from(JSON.stringify(labels)),
      reportSheet: async ({ title, url }) => Buffer.from(`%PDF ${title} ${url}`),
      reportPage: async ({ title, url }) => `<h1>${title}</h1> ${url}`,
      storyPage: async (story) => JSON.stringify(story),
    },
    clock,
    env: { SALVOR_HOME: '/home-of-the-test' },
    readFile: async (path) => files.get(path) ?? Promise.reject(new Error('ENOENT')),
    writeFile: async (path, bytes) => void files.set(path, bytes),
    serve: async (args) => (args.includes('4') ? 3 : 0),
    version: '0',
    out: () => undefined,
    err: () => undefined,
  };
  const salvor = async (...argv: string[]): Promise<Run> => {
    const out: string[] = [];
    const err: string[] = [];
    const code = await runCli(argv, { ...parts, out: (text) => void out.push(text), err: (text) => void err.push(text) });
    return { code, out: out.join('\n'), err: err.join('\n') };
  };
  return { salvor, files, stores, parts };
}

export interface Run {
  readonly code: number;
  readonly out: string;
  readonly err: string;
}
