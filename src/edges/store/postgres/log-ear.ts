import pg from 'pg';
import { connectionTo } from './database.ts';

/** Where a process that has appended says so, in its transaction, so that it is heard when that is committed. */
export const LOG_CHANNEL = 'salvor_log';

/** How long after a connection broke the next one is tried. */
const AGAIN_MS = 1000;

export interface LogEar {
  watch(tell: () => void): () => void;
  close(): Promise<void>;
}

/**
 * Listens for what other processes append. Nothing rests on it but speed: after a connection that broke everybody is told at once, since
 * something may have been missed.
 */
export function hearOf(url: string): LogEar {
  const watchers = new Set<() => void>();
  let client: pg.Client | null = null;
  let timer: NodeJS.Timeout | undefined;
  let isClosed = false;
  const tellAll = (): void => watchers.forEach((tell) => tell());

  const connect = async (): Promise<void> => {
    const fresh = new pg.Client(connectionTo(url));
    client = fresh;
    fresh.on('error', () => undefined);
    fresh.on('end', () => again(fresh));
    fresh.on('notification', tellAll);
    await fresh.connect();
    await fresh.query(`LISTEN ${LOG_CHANNEL}`);
    tellAll();
  };
  const again = (lost: pg.Client): void => {
    if (isClosed || lost !== client) return;
    client = null;
    timer = setTimeout(listen, AGAIN_MS);
  };
  const listen = (): void => {
    connect().catch(() => client && again(client));
  };
  listen();
  return {
    watch(tell) {
      watchers.add(tell);
      return () => void watchers.delete(tell);
    },
    async close() {
      isClosed = true;
      clearTimeout(timer);
      await client?.end().catch(() => undefined);
    },
  };
}
