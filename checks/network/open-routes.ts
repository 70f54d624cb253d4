import type { Clock } from '../../src/bench/ports.ts';
import { systemClock } from '../../src/edges/clock.ts';
import type { OpenedApp } from '../interface/open-app.ts';

/** A route as it is served, with what stands for its places filled in. */
export interface ServedRoute {
  readonly method: string;
  readonly path: string;
}

/** Every route that the server has, those of the web app apart, with names in place of parameters. */
export function servedRoutes({ app }: Pick<OpenedApp, 'app'>): ServedRoute[] {
  const all = app.routes
    .filter(({ method, path }) => method !== 'ALL' && path !== '/' && !path.includes('*'))
    .map(({ method, path }) => ({ method, path: path.replaceAll(/:(\w+)/g, (_all, name: string) => FILLED[name] ?? '1') }));
  return [...new Map(all.map((route) => [`${route.method} ${route.path}`, route])).values()];
}

const FILLED: Readonly<Record<string, string>> = { hash: '0'.repeat(64), size: 'view', id: 'tern-tn10' };

/** What a device of the network sends; `key` is its cookie. */
export const fromNetwork = (key?: string, more: Record<string, string> = {}): Record<string, string> => ({
  host: '192.0.2.7:4781',
  origin: 'https://192.0.2.7:4781',
  ...(key === undefined ? {} : { cookie: `__Host-salvor-device=${key}` }),
  ...more,
});

/** Asks a route over the network. */
export const askNetwork = async (
  { app }: Pick<OpenedApp, 'app'>,
  { method, path }: ServedRoute,
  headers: Record<string, string>,
  body?: unknown,
): Promise<Response> =>
  app.network.request(`https://192.0.2.7:4781${path}`, {
    method,
    headers: { ...headers, ...(method === 'POST' ? { 'content-type': 'application/json' } : {}) },
    ...(method === 'POST' ? { body: JSON.stringify(body ?? {}) } : {}),
  });

/** A clock on which a minute passes whenever it is looked at, so that no rate is ever exceeded. */
export function hurriedClock(): Clock {
  let minute = 0;
  return { ...systemClock(), now: () => new Date(Date.UTC(2026, 4, 1, 9, (minute += 1))) };
}

/** Routes that answer somebody without the key of a device with anything but that they do not know them; joining is the one that may. */
export async function openRoutes(opened: OpenedApp): Promise<string[]> {
  const open: string[] = [];
  for (const route of servedRoutes(opened)) {
    if (route.path === '/api/join') continue;
    for (const headers of [fromNetwork(), fromNetwork('not-a-key'), fromNetwork('')]) {
      const response = await askNetwork(opened, route, headers);
      if (response.status !== 401) open.push(`${route.method} ${route.path}: ${response.status}`);
    }
  }
  return open;
}
