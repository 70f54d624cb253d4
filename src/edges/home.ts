import { randomBytes } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** Where a bench keeps its things. */
export interface Home {
  readonly dir: string;
  readonly database: string;
  readonly photos: string;
  /** The person's own models, beside those that ship. */
  readonly models: string;
  /** What was read from all models, kept for a quick start. */
  readonly modelCache: string;
  /** What circuits of models say, computed and kept. */
  readonly boards: string;
  /** Photos that were compared, and what was found; only saves time. */
  readonly comparisons: string;
  /** Devices of the network that have joined. */
  readonly devices: string;
  /** The name under which this device writes events, kept with the bench. */
  readonly device: string;
}

/** The folder of a bench, made with its parts where they are missing. Throws what the disk says when it cannot be written. */
export function openHome(dir: string): Home {
  const home = {
    dir,
    database: join(dir, 'salvor.sqlite'),
    photos: join(dir, 'photos'),
    models: join(dir, 'models'),
    modelCache: join(dir, 'models-read.json'),
    boards: join(dir, 'boards'),
    comparisons: join(dir, 'comparisons'),
    devices: join(dir, 'devices.sqlite'),
  };
  for (const folder of [home.photos, home.models]) mkdirSync(folder, { recursive: true });
  return { ...home, device: deviceName(join(dir, 'device')) };
}

/** Made once; of two processes that make it at the same time, both take the name that the first one wrote. */
function deviceName(file: string): string {
  try {
    writeFileSync(file, `bench-${randomBytes(3).toString('hex')}\n`, { flag: 'wx' });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  return readFileSync(file, 'utf8').trim();
}
