import { Hono } from 'hono';
import { expect, it } from 'vitest';
import { requestCounters } from './counters.ts';

it('counts answers by method and kind of status, and not by what was asked', async () => {
  const counters = requestCounters();
  const app = new Hono().use(counters.count).get('/here', (c) => c.text('x'));
  await app.request('/here');
  await app.request('/here');
  await app.request('/nobody/blue');
  await app.request('/here', { method: 'BREW' });
  const text = counters.text();
  expect(text).toContain('salvor_request_seconds_count{method="GET",status="2xx"} 2');
  expect(text).toContain('salvor_request_seconds_bucket{method="GET",status="4xx",le="+Inf"} 1');
  expect(text).toContain('method="other"');
  expect(text).not.toMatch(/blue|nobody|BREW/);
});
