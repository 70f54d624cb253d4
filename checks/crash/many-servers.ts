import { once } from 'node:events';
import { setTimeout as wait } from 'node:timers/promises';
import { randomStream } from '../../src/core/numeric/index.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import type { PostgresServer } from '../store/postgres-server.ts';
import { acknowledge, everyStored, prepareItems, someEvents, type SentEvent } from './clients.ts';

export interface ManyResult {
  /** How many servers were killed. */
  readonly kills: number;
  readonly databaseCrashes: number;
  readonly acknowledged: number;
  /** Acknowledged, and not in the log of every server at the end. */
  readonly lost: number;
  /** Events that the log holds more than once. */
  readonly doubled: number;
  /** Servers whose state at the end has another hash than that of the first. */
  readonly apart: number;
}

const CLIENTS = 8;

/**
 * `servers` processes on one database take a stream of events from eight clients while one of them after the other is killed outright (SIGKILL)
 * at moments drawn from `seed` and started again; `databaseCrashes` times it is the database that goes down at once. A client that gets no answer
 * goes on at the next server, with the same event. Nothing is checked before the end: a loss anywhere stays a loss.
 */
export async function manyServers(
  postgres: PostgresServer,
  plan: {
    readonly servers: number;
    readonly kills: number;
    readonly databaseCrashes: number;
    readonly total: number;
    readonly seed: string;
  },
): Promise<ManyResult> {
  const random = randomStream(plan.seed);
  const url = await postgres.newDatabase();
  const homes = Array.from({ length: plan.servers }, () => temporaryHome());
  const start = (side: number): Promise<ServerProcess> => startServer(homes[side]!.home, ['--empty', '--database', url]);
  const running = await Promise.all(homes.map((_home, side) => start(side)));
  try {
    const events = someEvents(await prepareItems(running[0]!.url), plan.total);
    const acknowledged = new Set<string>();
    const client = async (which: number): Promise<void> => {
      const queue = events.filter((_event, i) => i % CLIENTS === which);
      for (let side = which; queue.length > 0; side++) {
        while (queue.length > 0 && (await isTaken(running[side % plan.servers]!.url, queue[0]!))) acknowledged.add(queue.shift()!.id);
        if (queue.length > 0) await wait(20);
      }
    };
    const trouble = [...Array<'kill'>(plan.kills).fill('kill'), ...Array<'crash'>(plan.databaseCrashes).fill('crash')];
    const troubles = async (): Promise<void> => {
      for (const [done, kind] of trouble.entries()) {
        const due = (plan.total * (done + random())) / (trouble.length + 1);
        while (acknowledged.size < due) await wait(1);
        if (kind === 'crash') await postgres.crash();
        else await killAndStart(running, Math.floor(random() * plan.servers), start);
      }
    };
    await Promise.all([troubles(), ...Array.from({ length: CLIENTS }, (_, which) => client(which))]);
    for (const { child, said } of running)
      if (child.exitCode !== null) throw new Error(`a server ended by itself (${child.exitCode}): ${said()}`);
    return await ended(running, plan, acknowledged);
  } finally {
    await Promise.all(running.map((server) => server.stop()));
    for (const { remove } of homes) remove();
  }
}

async function killAndStart(running: ServerProcess[], side: number, start: (side: number) => Promise<ServerProcess>): Promise<void> {
  const { child } = running[side]!;
  const exited = once(child, 'exit');
  child.kill('SIGKILL');
  await exited;
  running[side] = await start(side);
}

/** False when the server is gone, or cannot reach its database just now. */
async function isTaken(url: string, event: SentEvent): Promise<boolean> {
  try {
    return await acknowledge(url, event);
  } catch (error) {
    if (error instanceof Error && / answered 503: /.test(error.message)) return false;
    throw error;
  }
}

async function ended(
  running: readonly ServerProcess[],
  { kills, databaseCrashes }: { readonly kills: number; readonly databaseCrashes: number },
  acknowledged: ReadonlySet<string>,
): Promise<ManyResult> {
  const lost = new Set<string>();
  let doubled = 0;
  const digests: (string | null)[] = [];
  for (const { url } of running) {
    const ids = await everyStored(url);
    const stored = new Set(ids);
    for (const id of acknowledged) if (!stored.has(id)) lost.add(id);
    doubled += ids.length - stored.size;
    digests.push((await fetch(`${url}/api/bundle`)).headers.get('x-salvor-digest'));
  }
  const apart = digests.filter((digest) => digest === null || digest !== digests[0]).length;
  return { kills, databaseCrashes, acknowledged: acknowledged.size, lost: lost.size, doubled, apart };
}
