import { Hono } from 'hono';
import { expect, it } from 'vitest';
import { requestCounters } from './counters.ts';

it('counts answers by method and kind of status, and not by what was asked', async () => {
  const counters = requestCounters(() => new Date('2026-05-01T09:00:00Z'));
  const app = new Hono()
    .use(counters.count)
    .get('/here', (c) => c.text('x'))
    .get('/of/:name', (c) => c.text(c.req.param('name')));
  await app.request('/here');
  await app.request('/here');
  await app.request('/nobody/blue');
  await app.request('/here', { method: 'BREW' });
  await app.request('/of/anna');
  expect(counters.slowest().map(({ route }) => route)).toContain('GET /of/:name');
  expect(JSON.stringify(counters.slowest())).not.toMatch(/anna|blue/);
  const text = counters.text();
  expect(text).toContain('salvor_request_seconds_count{method="GET",status="2xx"} 3');
  expect(text).toContain('salvor_request_seconds_bucket{method="GET",status="4xx",le="+Inf"} 1');
  expect(text).toContain('method="other"');
  expect(text).not.toMatch(/blue|nobody|BREW/);
});
