import { getConnInfo } from '@hono/node-server/conninfo';
import type { Context, MiddlewareHandler } from 'hono';
import { getCookie } from 'hono/cookie';
import type { Clock, DeviceBook } from '../../bench/ports.ts';
import { rateLimit } from './rate-limit.ts';
import { refuse } from './refused.ts';
import { mayAct, roleNeeded } from './visitor.ts';

/** Sent back by a browser only over HTTPS, only to this host, never for another site, and never readable by a script. */
export const KEY_COOKIE = '__Host-salvor-device';
export const JOIN_PATH = '/api/join';

/** Addresses that answer with what is on the bench, or about this machine. The pages and programs of the web app itself hold nothing of it. */
export const DATA = /^\/(?:api|photos|health|metrics|openapi\.json)(?:\/|$)/;
const READS: ReadonlySet<string> = new Set(['GET', 'HEAD']);

export interface NetworkDoor {
  readonly devices: DeviceBook;
  /** Names and addresses of this machine, as a browser may write them. */
  readonly ownHosts: () => ReadonlySet<string>;
  readonly clock: Clock;
}

/**
 * The door to the network. A request goes through when it names this machine, comes from a page of this bench, stays within the rates, and
 * carries the key of a device whose role may ask for that. Without a key there are only the pages of the web app and the one address to join at.
 */
export function admitFromNetwork({ devices, ownHosts, clock }: NetworkDoor): MiddlewareHandler {
  const strangers = rateLimit({ burst: 60, perSecond: 2 });
  const joins = rateLimit({ burst: 10, perSecond: 1 / 60 });
  const known = rateLimit({ burst: 600, perSecond: 30 });
  const within = (limit: typeof known, name: string): void => {
    if (!limit.allows(name, clock.now().getTime())) throw refuse('too-many-requests');
  };
  return async (c, next) => {
    const { method, path } = c.req;
    refuseForeign(c, ownHosts());
    const device = devices.deviceOf(getCookie(c, KEY_COOKIE) ?? '');
    if (device) within(known, device.id);
    else within(strangers, addressOf(c));
    if (path === JOIN_PATH && method === 'POST') within(joins, addressOf(c));
    else if (DATA.test(path) || !READS.has(method)) {
      if (!device) throw refuse('no-device-key');
      const needed = roleNeeded(method, path);
      if (!mayAct(device.role, needed)) throw refuse('role-too-small', { where: device.name, detail: needed });
    }
    if (device) c.set('visitor', { door: 'network', role: device.role, name: device.name });
    await next();
  };
}

function refuseForeign(c: Context, hosts: ReadonlySet<string>): void {
  const host = c.req.header('host') ?? new URL(c.req.url).host;
  if (!hosts.has(host.replace(/:\d+$/, '').toLowerCase())) throw refuse('foreign-host', { where: 'Host', detail: host });
  if (READS.has(c.req.method)) return;
  const origin = c.req.header('origin');
  if (origin !== `https://${host}`) throw refuse('foreign-origin', { where: 'Origin', detail: origin ?? 'no page at all' });
}

/** Where a request comes from; one that came over no connection, as in a test, is a stranger like any other. */
const addressOf = (c: Context): string => (c.env?.incoming ? (getConnInfo(c).remote.address ?? '') : '');
