import { createAdaptorServer } from '@hono/node-server';
import type { Server } from 'node:http';
import { createServer as createHttpsServer } from 'node:https';
import type { AddressInfo } from 'node:net';

export interface Listening {
  readonly port: number;
  /** Answers what is under way, ends the streams, and resolves when all is closed. */
  close(): Promise<void>;
}

const LAST_ANSWERS_MS = 2000;
/** A connection that nobody uses stays so long; shorter, and a question of a person who paused would cross its end on the way. */
const IDLE_MS = 75_000;
/** Connections from the network at once; each page holds two or three. */
const MOST_CONNECTIONS = 500;

type Fetch = Parameters<typeof createAdaptorServer>[0]['fetch'];

/** Answers on 127.0.0.1 only. A port in use is an outcome; other troubles throw. */
export const listen = (fetch: Fetch, port: number): Promise<Listening | 'port-taken'> =>
  begin(createAdaptorServer({ fetch }) as Server, port, '127.0.0.1');

/** Answers on every address of this machine, over HTTPS (TLS 1.2 or later) with this certificate. */
export function listenToNetwork(
  fetch: Fetch,
  port: number,
  { cert, key }: { readonly cert: string; readonly key: string },
): Promise<Listening | 'port-taken'> {
  const options = { cert, key, minVersion: 'TLSv1.2' } as const;
  const server = createAdaptorServer({ fetch, createServer: createHttpsServer, serverOptions: options }) as Server;
  server.maxConnections = MOST_CONNECTIONS;
  return begin(server, port, undefined);
}

function begin(server: Server, port: number, host: string | undefined): Promise<Listening | 'port-taken'> {
  server.keepAliveTimeout = IDLE_MS;
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => (error.code === 'EADDRINUSE' ? resolve('port-taken') : reject(error)));
    server.listen(port, host, () => resolve({ port: (server.address() as AddressInfo).port, close: () => close(server) }));
  });
}

function close(server: Server): Promise<void> {
  return new Promise((resolve) => {
    const cut = setTimeout(() => server.closeAllConnections(), LAST_ANSWERS_MS);
    server.close(() => {
      clearTimeout(cut);
      resolve();
    });
    server.closeIdleConnections();
  });
}
