import { Hono } from 'hono';
import { describe, expect, it } from 'vitest';
import { answerError } from './answer-errors.ts';
import { guard } from './guard.ts';

const app = new Hono().use(guard).all('*', (c) => c.text('in'));
app.onError(answerError(() => undefined));

const status = async (method: string, headers: Record<string, string>): Promise<number> =>
  (await app.request('http://127.0.0.1:4780/api/events', { method, headers })).status;

describe('the guard', () => {
  it.each(['127.0.0.1:4780', 'localhost:4780', 'LOCALHOST', '[::1]:4780'])(
    'lets in what is addressed to this machine as %s',
    async (host) => {
      expect(await status('GET', { host })).toBe(200);
    },
  );

  it.each([
    'attacker.example',
    'attacker.example:4780',
    '127.0.0.1.attacker.example',
    'localhost.attacker.example:4780',
    '192.168.1.7:4780',
    '',
  ])('refuses what is addressed to "%s"', async (host) => {
    expect(await status('GET', { host })).toBe(403);
  });

  it('lets programs without an origin and its own pages change things', async () => {
    expect(await status('POST', { host: '127.0.0.1:4780' })).toBe(200);
    expect(await status('POST', { host: '127.0.0.1:4780', origin: 'http://127.0.0.1:4780', 'sec-fetch-site': 'same-origin' })).toBe(200);
  });

  it.each([
    ['another site', { origin: 'https://attacker.example' }],
    ['another port of this machine', { origin: 'http://127.0.0.1:3000' }],
    ['a page that hides its origin', { origin: 'null' }],
    ['another site whose browser leaves the origin out', { 'sec-fetch-site': 'cross-site' }],
  ])('refuses to change anything for %s', async (_who, headers) => {
    for (const method of ['POST', 'PUT', 'DELETE', 'OPTIONS'])
      expect(await status(method, { host: '127.0.0.1:4780', ...headers })).toBe(403);
  });
});
