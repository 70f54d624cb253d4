import { join } from 'node:path';
import { simulatedBoards } from '../../src/bench/boards/testing/simulated-boards.ts';
import { openBench } from '../../src/bench/open-bench.ts';
import { ownDoor } from '../../src/bench/shared/index.ts';
import { createApp } from '../../src/apps/server/app.ts';
import { listen } from '../../src/apps/server/listen.ts';
import { openBackupShelf, modelBundles, readBundle, writeBundle } from '../../src/edges/bundle/index.ts';
import { systemClock } from '../../src/edges/clock.ts';
import { openDeviceBook } from '../../src/edges/devices/index.ts';
import { openHome } from '../../src/edges/home.ts';
import { openOwnQueue } from '../../src/edges/jobs/index.ts';
import { openInstruments } from '../../src/edges/instruments/index.ts';
import { loadModels } from '../../src/edges/models/index.ts';
import { openPhotoStore } from '../../src/edges/photos/index.ts';
import { openPrinter } from '../../src/edges/print/index.ts';
import { openSqliteStore } from '../../src/edges/store/sqlite-store.ts';

const ROOT = join(import.meta.dirname, '../..');
/** Blocks whose faults are simulated: what a Tern TN-20 gets its power by. Few boards and few nets, so that it is done in seconds. */
const BLOCKS = new Set(['fuse', 'switch', 'converter', 'regulator']);
const NETS = ['vbat', 'vsys', 'v50', 'v33'];

export interface BoardServer {
  readonly url: string;
  readonly record: (events: readonly unknown[]) => void;
  stop(): Promise<void>;
}

/** The server with boards of a Tern TN-20 that are simulated at once: `done` of their rows, all by default. */
export async function startBoardServer(dir: string, done?: number): Promise<BoardServer> {
  const home = openHome(dir);
  const { models } = await loadModels(join(ROOT, 'models'));
  const tern = models.get('tern-tn20')!;
  const boards = simulatedBoards(tern, {
    draws: 4,
    faults: ({ block, kind }) => block !== undefined && BLOCKS.has(block) && kind !== 'bridge',
    nets: NETS,
    state: 'battery',
    ...(done === undefined ? {} : { done }),
  });
  const store = openSqliteStore(home.database);
  const photos = openPhotoStore(home.photos);
  const clock = systemClock();
  const devices = openDeviceBook(home.devices, clock);
  const bench = openBench({ store, models, boards, clock, device: home.device, version: '0.0.0' });
  const app = createApp({
    bench,
    door: ownDoor(bench),
    jobs: openOwnQueue(() => clock.now()),
    errors: () => [],
    clock,
    devices,
    network: () => null,
    backups: openBackupShelf(dir),
    photos,
    printer: openPrinter(),
    instruments: openInstruments(),
    version: '0.0.0',
    home: dir,
    bundle: { write: writeBundle, read: readBundle },
    modelBundles,
    webDir: join(ROOT, 'dist/web'),
    log: (sentence, error) => console.error(sentence, error),
  });
  const listening = await listen(app.fetch, 0);
  if (listening === 'port-taken') throw new Error('the machine gave a port that is taken');
  return {
    url: `http://127.0.0.1:${listening.port}`,
    record: (events) => {
      const result = bench.record(events);
      if (!result.ok) throw new Error(`${result.code}: ${result.message}`);
    },
    stop: async () => {
      app.close();
      await listening.close();
      await photos.close();
      devices.close();
      store.close();
    },
  };
}
