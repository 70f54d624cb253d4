import type { MiddlewareHandler } from 'hono';
import { refuse } from './refused.ts';
import { HERE } from './visitor.ts';

const OWN_NAMES: ReadonlySet<string> = new Set(['127.0.0.1', 'localhost', '[::1]']);
const READS: ReadonlySet<string> = new Set(['GET', 'HEAD']);

/**
 * Refuses what another page could send here: a name that is not this machine's own (DNS rebinding), and anything but
 * reading that comes from another origin or from a page that hides its origin.
 */
export const guard: MiddlewareHandler = async (c, next) => {
  const host = c.req.header('host') ?? new URL(c.req.url).host;
  if (!OWN_NAMES.has(host.replace(/:\d+$/, '').toLowerCase())) throw refuse('foreign-host', { where: 'Host', detail: host });
  if (!READS.has(c.req.method)) refuseForeignOrigin(c.req.header('origin'), host, c.req.header('sec-fetch-site'));
  c.set('visitor', HERE);
  await next();
};

function refuseForeignOrigin(origin: string | undefined, host: string, site: string | undefined): void {
  const isForeign = origin === undefined ? site !== undefined && site !== 'same-origin' && site !== 'none' : origin !== `http://${host}`;
  if (isForeign) throw refuse('foreign-origin', { where: 'Origin', detail: origin ?? 'another site' });
}
