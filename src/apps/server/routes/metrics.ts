import { OpenAPIHono, createRoute } from '@hono/zod-openapi';
import type { AppParts } from '../app-parts.ts';
import type { Counters } from '../counters.ts';
import { refusals } from '../responses.ts';

const TYPE = 'application/openmetrics-text';

const route = createRoute({
  method: 'get',
  path: '/metrics',
  summary:
    'How the server does, in the text format of OpenMetrics: requests, events, items, devices, memory. Nothing of what is on the bench',
  responses: { 200: { description: 'The measures', content: { [TYPE]: { schema: { type: 'string' } } } }, ...refusals() },
});

const gauge = (name: string, help: string, value: number): string =>
  [`# TYPE ${name} gauge`, `# HELP ${name} ${help}`, `${name} ${value}`].join('\n');

/** Measures for a program that watches servers. */
export const metricRoutes = ({ bench, devices, jobs, errors }: AppParts, counters: Counters) =>
  new OpenAPIHono().openapi(route, async (c) => {
    const { seq, items } = bench.state();
    const { waiting, failed } = await jobs.report();
    const lines = [
      counters.text(),
      gauge('salvor_log_events', 'Events in the log.', seq),
      gauge('salvor_items', 'Items on file.', items.size),
      gauge('salvor_devices', 'Devices of the network that have joined.', devices.list().length),
      gauge('salvor_jobs_waiting', 'Jobs that wait or are being done.', waiting),
      gauge('salvor_jobs_failed', 'Jobs of late that failed.', failed.length),
      gauge('salvor_errors', 'Errors of late that nobody expected.', errors().length),
      gauge('salvor_memory_bytes', 'Memory that the process holds.', process.memoryUsage.rss()),
      gauge('salvor_uptime_seconds', 'Since the start of the process.', Math.round(process.uptime())),
      '# EOF\n',
    ];
    return c.body(lines.join('\n'), 200, { 'content-type': `${TYPE}; version=1.0.0; charset=utf-8`, 'cache-control': 'no-store' });
  });
