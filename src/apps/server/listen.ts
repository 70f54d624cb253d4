import { createAdaptorServer } from '@hono/node-server';
import type { Server } from 'node:http';
import type { AddressInfo } from 'node:net';

export interface Listening {
  readonly port: number;
  /** Answers what is under way, ends the streams, and resolves when all is closed. */
  close(): Promise<void>;
}

const LAST_ANSWERS_MS = 2000;

/** Answers on 127.0.0.1 only. A port in use is an outcome; other troubles throw. */
export function listen(fetch: (request: Request) => unknown, port: number): Promise<Listening | 'port-taken'> {
  const server = createAdaptorServer({ fetch }) as Server;
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => (error.code === 'EADDRINUSE' ? resolve('port-taken') : reject(error)));
    server.listen(port, '127.0.0.1', () => resolve({ port: (server.address() as AddressInfo).port, close: () => close(server) }));
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
