import { OpenAPIHono } from '@hono/zod-openapi';
import { Hono, type MiddlewareHandler } from 'hono';
import { bodyLimit } from 'hono/body-limit';
import { compress } from 'hono/compress';
import { admitFromNetwork } from './admission.ts';
import { answerError, refuseBadInput } from './answer-errors.ts';
import type { AppParts } from './app-parts.ts';
import { requestCounters, type Counters } from './counters.ts';
import { EventSchema } from './event-schema.ts';
import { freshened } from './freshened.ts';
import { guard } from './guard.ts';
import { securityHeaders } from './headers.ts';
import { watchLog, type LogWatcher } from './log-watcher.ts';
import { describeInterface } from './describe-interface.ts';
import { refuse } from './refused.ts';
import { backupRoutes } from './routes/backups.ts';
import { boardRoutes } from './routes/boards.ts';
import { bookRoutes } from './routes/books.ts';
import { bundleRoutes } from './routes/bundle.ts';
import { changeRoutes } from './routes/changes.ts';
import { comparisonRoutes } from './routes/comparisons.ts';
import { deviceRoutes } from './routes/devices.ts';
import { eventRoutes } from './routes/events.ts';
import { fitRoutes } from './routes/fit.ts';
import { growShareRoutes } from './routes/grow-share.ts';
import { growthRoutes } from './routes/growth.ts';
import { growBoardRoutes } from './routes/grow-board.ts';
import { healthRoutes } from './routes/health.ts';
import { instrumentRoutes } from './routes/instruments.ts';
import { itemRoutes } from './routes/items.ts';
import { labelRoutes } from './routes/labels.ts';
import { metricRoutes } from './routes/metrics.ts';
import { marketRoutes } from './routes/market.ts';
import { matRoutes } from './routes/mats.ts';
import { modelCheckRoutes } from './routes/model-check.ts';
import { modelRoutes } from './routes/models.ts';
import { openingRoutes } from './routes/opening.ts';
import { outlineRoutes } from './routes/outlines.ts';
import { photoRoutes } from './routes/photos.ts';
import { planRoutes } from './routes/plan.ts';
import { reportRoutes } from './routes/reports.ts';
import { scoutRoutes } from './routes/scout.ts';
import { upkeepRoutes } from './routes/upkeep.ts';
import { viewRoutes } from './routes/views.ts';
import { webApp } from './web-app.ts';

const MIB = 2 ** 20;
/** The largest body that an address takes; all that are not named take as much as events. */
export const BODY_LIMITS = { events: 16 * MIB, photos: 512 * MIB, bundle: 1024 * MIB } as const;
const LIMITS: Readonly<Record<string, number>> = {
  '/api/photos': BODY_LIMITS.photos,
  '/api/bundle': BODY_LIMITS.bundle,
  '/api/model-bundle': BODY_LIMITS.photos,
};

const limit = (maxSize: number) =>
  bodyLimit({
    maxSize,
    onError: () => {
      throw refuse('body-too-large', { where: 'body' });
    },
  });

export interface App {
  /** Answers programs and pages of this machine. */
  readonly fetch: Hono['fetch'];
  readonly request: Hono['request'];
  /** Answers devices of the network. */
  readonly network: Pick<Hono, 'fetch' | 'request'>;
  /** Every route that is served. */
  readonly routes: OpenAPIHono['routes'];
  /** The description of each route with its schemas, as `/openapi.json` is made from it. */
  readonly described: OpenAPIHono['openAPIRegistry'];
  /** Ends the streams that stay open. */
  close(): void;
}

/** The whole server as two functions from requests to answers: one for this machine, one for the network. */
export function createApp(parts: AppParts): App {
  const watcher = watchLog(() => parts.bench.state().seq);
  const counters = requestCounters(() => parts.clock.now());
  const app = routesOf(parts, watcher, counters);
  const behind = (door: MiddlewareHandler): Hono => {
    const outer = new Hono();
    outer.onError(answerError(parts.log));
    outer.use(counters.count, securityHeaders, door);
    outer.route('/', app);
    outer.notFound((c) => {
      throw refuse('no-such-address', { detail: `${c.req.method} ${c.req.path}` });
    });
    return outer;
  };
  const here = behind(guard);
  const network = behind(admitFromNetwork({ ...parts, ownHosts: () => parts.network()?.hosts ?? new Set() }));
  return { fetch: here.fetch, request: here.request, network, routes: app.routes, described: app.openAPIRegistry, close: watcher.close };
}

/** Every address, whoever asks; the doors in front say who that is. */
function routesOf(parts: AppParts, watcher: LogWatcher, counters: Counters): OpenAPIHono {
  const app = new OpenAPIHono({ defaultHook: refuseBadInput });
  app.onError(answerError(parts.log));
  app.use(compress());
  app.use(freshened(parts.door));
  app.use((c, next) => limit(LIMITS[c.req.path] ?? BODY_LIMITS.events)(c, next));
  app.openAPIRegistry.register('Event', EventSchema);
  app.route('/', viewRoutes(parts));
  app.route('/', itemRoutes(parts));
  app.route('/', modelRoutes(parts));
  app.route('/', growthRoutes(parts));
  app.route('/', growShareRoutes(parts));
  app.route('/', modelCheckRoutes(parts));
  app.route('/', growBoardRoutes(parts));
  app.route('/', matRoutes(parts));
  app.route('/', openingRoutes(parts));
  app.route('/', boardRoutes(parts));
  app.route('/', bookRoutes(parts));
  app.route('/', marketRoutes(parts));
  app.route('/', planRoutes(parts));
  app.route('/', reportRoutes(parts));
  app.route('/', instrumentRoutes(parts));
  app.route('/', scoutRoutes(parts));
  app.route('/', fitRoutes(parts));
  app.route('/', labelRoutes(parts));
  app.route('/', eventRoutes(parts, watcher.look));
  app.route('/', photoRoutes(parts));
  app.route('/', outlineRoutes(parts));
  app.route('/', comparisonRoutes(parts));
  app.route('/', bundleRoutes(parts, watcher.look));
  app.route('/', backupRoutes(parts));
  app.route('/', changeRoutes(watcher, parts.boards));
  app.route('/', deviceRoutes(parts));
  app.route('/', healthRoutes(parts));
  app.route('/', metricRoutes(parts, counters));
  app.route('/', upkeepRoutes(parts, counters));
  app.route('/', describeInterface(app, parts.version));
  app.route('/', webApp(parts.webDir));
  return app;
}
