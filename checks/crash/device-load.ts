import { setTimeout as wait } from 'node:timers/promises';
import { randomStream, type RandomStream } from '../../src/core/numeric/index.ts';
import { startServer, temporaryHome } from '../figures/server-process.ts';
import type { PostgresServer } from '../store/postgres-server.ts';
import { everyStored, prepareItems, someEvents, type SentEvent } from './clients.ts';

export interface LoadPlan {
  readonly servers: number;
  readonly devices: number;
  /** For how long they work. */
  readonly seconds: number;
  /** Mean pause of a device between an answer and its next question. */
  readonly pauseMs: number;
  readonly seed: string;
}

export interface LoadResult {
  readonly times: Readonly<Record<Action, readonly number[]>>;
  /** Answers other than 200, and none at all. */
  readonly errors: readonly string[];
  /** Acknowledged events that not every server knows at the end. */
  readonly lost: number;
}

const ACTIONS = ['note', 'open', 'list', 'search', 'overview'] as const;
type Action = (typeof ACTIONS)[number];
/** What of a hundred things a device does. */
const SHARES: Readonly<Record<Action, number>> = { note: 30, open: 30, list: 15, search: 15, overview: 10 };

/**
 * Devices spread over server processes on one database: each notes things about its unit, opens it, lists and searches, with pauses as a person makes
 * them.
 * Before the clock starts every server has opened every unit once. Times are those that the device sees, from the question to the last byte of the answer.
 */
export async function deviceLoad(postgres: PostgresServer, plan: LoadPlan): Promise<LoadResult> {
  const url = await postgres.newDatabase();
  const homes = Array.from({ length: plan.servers }, () => temporaryHome());
  const servers = await Promise.all(homes.map(({ home }) => startServer(home, ['--empty', '--database', url])));
  try {
    const prepared = await prepareItems(servers[0]!.url, UNITS);
    const result: { times: Record<Action, number[]>; errors: string[] } = {
      times: { note: [], open: [], list: [], search: [], overview: [] },
      errors: [],
    };
    for (let unit = 0; unit < UNITS; unit++)
      await Promise.all(servers.map((server) => fetch(`${server.url}${pathOf('open', unit)}`).then((r) => r.arrayBuffer())));
    const acknowledged: string[] = [];
    const until = performance.now() + plan.seconds * 1000;
    const device = async (which: number): Promise<void> => {
      const mine = which % UNITS;
      const random = randomStream(`${plan.seed} ${which}`);
      const base = servers[which % servers.length]!.url;
      while (performance.now() < until) {
        await wait(random() * 2 * plan.pauseMs);
        const action = someAction(random);
        const event = someEvents(prepared, 1, mine + UNITS * Math.floor(random() * 20))[0]!;
        const started = performance.now();
        const error = await ask(base, action, event, mine);
        result.times[action].push(performance.now() - started);
        if (error !== null) result.errors.push(`${action}: ${error}`);
        else if (action === 'note') acknowledged.push(event.id);
      }
    };
    await Promise.all(Array.from({ length: plan.devices }, (_, which) => device(which)));
    const logs = await Promise.all(servers.map(async (server) => new Set(await everyStored(server.url))));
    return { ...result, lost: acknowledged.filter((id) => logs.some((log) => !log.has(id))).length };
  } finally {
    await Promise.all(servers.map((server) => server.stop()));
    for (const { remove } of homes) remove();
  }
}

/** Units on the bench; each device has one of them before it. */
const UNITS = 50;

function someAction(random: RandomStream): Action {
  let left = random() * 100;
  return ACTIONS.find((action) => (left -= SHARES[action]) < 0) ?? 'overview';
}

/** Null when it was answered; else what came instead. */
async function ask(base: string, action: Action, event: SentEvent, mine: number): Promise<string | null> {
  try {
    const response = await fetch(`${base}${pathOf(action, mine)}`, action === 'note' ? posting(event) : {});
    const body = await response.arrayBuffer();
    return response.ok ? null : `${response.status} ${Buffer.from(body).toString().slice(0, 200)}`;
  } catch (error) {
    return error instanceof Error ? String(error.cause ?? error) : String(error);
  }
}

const posting = (event: SentEvent): RequestInit => ({
  method: 'POST',
  headers: { 'content-type': 'application/json' },
  body: JSON.stringify({ events: [event] }),
});

function pathOf(action: Action, mine: number): string {
  if (action === 'note') return '/api/events';
  if (action === 'open') return `/api/items/crash-${mine + 1}`;
  if (action === 'list') return '/api/items?limit=50';
  if (action === 'search') return `/api/items?limit=50&q=crash%20${mine + 1}`;
  return '/api/bench';
}
