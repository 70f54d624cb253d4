import { once } from 'node:events';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { acknowledge, everyStored, prepareItems, someEvents, type SentEvent } from './clients.ts';

export interface KillResult {
  /** How many servers were killed. */
  readonly rounds: number;
  readonly acknowledged: number;
  /** Acknowledged, and not in the log after a restart. */
  readonly lost: number;
  /** Events that are in the log more than once. */
  readonly doubled: number;
  /** Events that the log does not hold at the end, though the clients went on until all were acknowledged. */
  readonly missing: number;
  /** What the check of the database says at the end; "ok" when it is whole. */
  readonly database: string;
}

const CLIENTS = 2;

/**
 * Two clients stream `total` events, one a request, while the server is killed outright (SIGKILL) `rounds` times at
 * points drawn from `seed`. After each kill it is started again on the same folder, every acknowledged event is looked
 * for, and the clients go on with what had no answer, under the same ids.
 */
export async function killRounds(rounds: number, seed: string, total = 1000): Promise<KillResult> {
  const random = randomStream(seed);
  const { home, remove } = temporaryHome();
  let server = await startServer(home, ['--empty']);
  try {
    const events = someEvents(await prepareItems(server.url), total);
    const queues = Array.from({ length: CLIENTS }, (_, client) => events.filter((_event, i) => i % CLIENTS === client));
    const acknowledged = new Set<string>();
    const lost = new Set<string>();
    for (let round = 1; round <= rounds; round++) {
      const until = round < rounds ? Math.round((total * (round - 1 + random())) / rounds) : total;
      await streamAndKill(server, queues, acknowledged, until, random);
      server = await startServer(home, ['--empty']);
      const stored = new Set(await everyStored(server.url));
      for (const id of acknowledged) if (!stored.has(id)) lost.add(id);
    }
    const stored = await everyStored(server.url);
    await server.stop();
    return {
      rounds,
      acknowledged: acknowledged.size,
      lost: lost.size,
      doubled: stored.length - new Set(stored).size,
      missing: events.filter(({ id }) => !stored.includes(id)).length,
      database: integrity(join(home, 'salvor.sqlite')),
    };
  } finally {
    server.child.kill('SIGKILL');
    remove();
  }
}

/** Streams until so many events in all are acknowledged, then kills the server up to three milliseconds later, in the middle of the next ones. */
async function streamAndKill(
  { url, child }: ServerProcess,
  queues: readonly SentEvent[][],
  acknowledged: Set<string>,
  until: number,
  random: RandomStream,
): Promise<void> {
  const exited = once(child, 'exit');
  const killSoon = (): void => void setTimeout(() => child.kill('SIGKILL'), random() * 3);
  const isDue = (): boolean => acknowledged.size >= until;
  if (isDue()) killSoon();
  const client = async (queue: SentEvent[]): Promise<void> => {
    while (queue.length > 0 && (await acknowledge(url, queue[0]!))) {
      acknowledged.add(queue.shift()!.id);
      if (acknowledged.size === until) killSoon();
    }
  };
  await Promise.all(queues.map(client));
  await exited;
}

/** What the check of SQLite says of a database file; "ok" when it is whole. */
export function integrity(file: string): string {
  const database = new Database(file, { readonly: true });
  try {
    return String(database.pragma('integrity_check', { simple: true }));
  } finally {
    database.close();
  }
}
