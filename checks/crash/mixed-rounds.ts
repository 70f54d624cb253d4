import { once } from 'node:events';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { acknowledge, everyStored, prepareItems, someEvents, type SentEvent } from './clients.ts';
import { integrity } from './kill-rounds.ts';
import { halfFiles, keepPicture, missingPictures, somePicture } from './photo-clients.ts';

export interface MixedResult {
  /** How many servers were killed. */
  readonly rounds: number;
  readonly events: number;
  readonly photos: number;
  /** Acknowledged, and not in the log after a restart; of photos, not whole in all three sizes. */
  readonly lostEvents: number;
  readonly lostPhotos: number;
  readonly doubled: number;
  /** Rounds after which a file of the photos was half there. */
  readonly halfFiles: number;
  readonly database: string;
}

/** Pauses of a client between two sendings, in milliseconds, at most. */
const PAUSE_MS = 20;
/** A kill comes at most so long after the server is ready. Loading the library of photos alone takes a good part of it. */
const LIFE_MS = 1500;
/** Photos of earlier rounds that are looked at again after each restart; all of them are at the end. */
const LOOK_AGAIN = 5;

/**
 * A client that notes and one that sends photos, both at random times, while the server is killed outright (SIGKILL) `rounds` times at moments
 * drawn from `seed`. After each kill it is started again on the same folder, and all that was acknowledged is looked for.
 */
export async function mixedRounds(rounds: number, seed: string): Promise<MixedResult> {
  const random = randomStream(seed);
  const { home, remove } = temporaryHome();
  let server = await startServer(home, ['--empty']);
  try {
    const prepared = await prepareItems(server.url);
    const events = new Set<string>();
    const photos: string[] = [];
    const lost = { events: new Set<string>(), photos: new Set<string>() };
    let half = 0;
    for (let round = 0; round < rounds; round++) {
      const kept = await workUntilKilled(server, someEvents(prepared, 200), random, photos.length);
      for (const id of kept.events) events.add(id);
      photos.push(...kept.photos);
      server = await startServer(home, ['--empty']);
      const stored = new Set(await everyStored(server.url));
      for (const id of events) if (!stored.has(id)) lost.events.add(id);
      for (const hash of await missingPictures(server.url, photos.slice(-LOOK_AGAIN))) lost.photos.add(hash);
      if (await staysHalf(join(home, 'photos'))) half++;
    }
    for (const hash of await missingPictures(server.url, photos)) lost.photos.add(hash);
    const stored = await everyStored(server.url);
    await server.stop();
    return {
      rounds,
      events: events.size,
      photos: photos.length,
      lostEvents: lost.events.size,
      lostPhotos: lost.photos.size,
      doubled: stored.length - new Set(stored).size,
      halfFiles: half,
      database: integrity(join(home, 'salvor.sqlite')),
    };
  } finally {
    server.child.kill('SIGKILL');
    remove();
  }
}

/** Whether something half is left once the server has swept up, which it does beside its first answers. */
async function staysHalf(dir: string): Promise<boolean> {
  for (let tries = 0; tries < 20 && halfFiles(dir).length > 0; tries++) await wait(100);
  return halfFiles(dir).length > 0;
}

interface Kept {
  readonly events: readonly string[];
  readonly photos: readonly string[];
}

async function workUntilKilled({ url, child }: ServerProcess, queue: SentEvent[], random: RandomStream, pictures: number): Promise<Kept> {
  const exited = once(child, 'exit');
  const events: string[] = [];
  const photos: string[] = [];
  setTimeout(() => child.kill('SIGKILL'), random() * LIFE_MS);
  const note = async (): Promise<void> => {
    for (const event of queue) {
      if (!(await acknowledge(url, event))) return;
      events.push(event.id);
      await wait(random() * PAUSE_MS);
    }
  };
  const photograph = async (): Promise<void> => {
    for (let n = pictures; ; n++) {
      const hash = await keepPicture(url, await somePicture(random, n));
      if (hash === null) return;
      photos.push(hash);
      await wait(random() * PAUSE_MS);
    }
  };
  await Promise.all([note(), photograph()]);
  await exited;
  return { events, photos };
}
