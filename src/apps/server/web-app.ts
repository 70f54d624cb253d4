import { serveStatic } from '@hono/node-server/serve-static';
import { OpenAPIHono } from '@hono/zod-openapi';
import type { MiddlewareHandler } from 'hono';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { IMMUTABLE } from './headers.ts';
import { refuse } from './refused.ts';

/** Addresses that are never a page of the web app. */
const NOT_A_PAGE = /^\/(?:api|photos|assets)(?:\/|$)|\.[a-z0-9]+$/i;

/** The built web app: its files (those with a hash in the name never change), and its one page for every address of its own. */
export function webApp(dir: string | null): OpenAPIHono {
  const app = new OpenAPIHono();
  if (dir === null || !existsSync(join(dir, 'index.html'))) return app.get('/', notBuilt) as unknown as OpenAPIHono;
  app.get('/assets/*', caching(IMMUTABLE), serveStatic({ root: dir, precompressed: true }));
  app.get('*', caching('no-cache'), serveStatic({ root: dir, precompressed: true }));
  app.get('*', async (c, next) => (NOT_A_PAGE.test(c.req.path) ? next() : serveStatic({ path: join(dir, 'index.html') })(c, next)));
  return app;
}

const caching =
  (value: string): MiddlewareHandler =>
  async (c, next) => {
    await next();
    if (c.res.ok) c.header('cache-control', value);
  };

const notBuilt: MiddlewareHandler = () => {
  throw refuse('web-not-built');
};
