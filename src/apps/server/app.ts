import { OpenAPIHono } from '@hono/zod-openapi';
import { bodyLimit } from 'hono/body-limit';
import { compress } from 'hono/compress';
import { answerError, refuseBadInput } from './answer-errors.ts';
import type { AppParts } from './app-parts.ts';
import { EventSchema } from './event-schema.ts';
import { guard } from './guard.ts';
import { securityHeaders } from './headers.ts';
import { watchLog } from './log-watcher.ts';
import { describeInterface } from './describe-interface.ts';
import { refuse } from './refused.ts';
import { boardRoutes } from './routes/boards.ts';
import { bookRoutes } from './routes/books.ts';
import { bundleRoutes } from './routes/bundle.ts';
import { changeRoutes } from './routes/changes.ts';
import { eventRoutes } from './routes/events.ts';
import { healthRoutes } from './routes/health.ts';
import { itemRoutes } from './routes/items.ts';
import { marketRoutes } from './routes/market.ts';
import { modelRoutes } from './routes/models.ts';
import { photoRoutes } from './routes/photos.ts';
import { planRoutes } from './routes/plan.ts';
import { scoutRoutes } from './routes/scout.ts';
import { viewRoutes } from './routes/views.ts';
import { webApp } from './web-app.ts';

const MIB = 2 ** 20;
/** The largest body that an address takes. */
export const BODY_LIMITS = { events: 16 * MIB, photos: 512 * MIB, bundle: 1024 * MIB } as const;

const limit = (maxSize: number) =>
  bodyLimit({
    maxSize,
    onError: () => {
      throw refuse('body-too-large', { where: 'body' });
    },
  });

export interface App {
  readonly fetch: OpenAPIHono['fetch'];
  readonly request: OpenAPIHono['request'];
  /** Every route that is served. */
  readonly routes: OpenAPIHono['routes'];
  /** The description of each route with its schemas, as `/openapi.json` is made from it. */
  readonly described: OpenAPIHono['openAPIRegistry'];
  /** Ends the streams that stay open. */
  close(): void;
}

/** The whole server as a function from requests to answers. */
export function createApp(parts: AppParts): App {
  const watcher = watchLog(() => parts.bench.state().seq);
  const app = new OpenAPIHono({ defaultHook: refuseBadInput });
  app.onError(answerError(parts.log));
  app.use(securityHeaders);
  app.use(guard);
  app.use(compress());
  app.use('/api/photos', limit(BODY_LIMITS.photos));
  app.use('/api/bundle', limit(BODY_LIMITS.bundle));
  app.use('/api/events', limit(BODY_LIMITS.events));
  app.use('/api/scout', limit(BODY_LIMITS.events));
  app.use('/api/plan/*', limit(BODY_LIMITS.events));
  app.openAPIRegistry.register('Event', EventSchema);
  app.route('/', viewRoutes(parts));
  app.route('/', itemRoutes(parts));
  app.route('/', modelRoutes(parts));
  app.route('/', boardRoutes(parts));
  app.route('/', bookRoutes(parts));
  app.route('/', marketRoutes(parts));
  app.route('/', planRoutes(parts));
  app.route('/', scoutRoutes(parts));
  app.route('/', eventRoutes(parts, watcher.look));
  app.route('/', photoRoutes(parts));
  app.route('/', bundleRoutes(parts, watcher.look));
  app.route('/', changeRoutes(watcher, parts.boards));
  app.route('/', healthRoutes(parts));
  app.route('/', describeInterface(app, parts.version));
  app.route('/', webApp(parts.webDir));
  app.notFound((c) => {
    throw refuse('no-such-address', { detail: `${c.req.method} ${c.req.path}` });
  });
  return { fetch: app.fetch, request: app.request, routes: app.routes, described: app.openAPIRegistry, close: watcher.close };
}
