import { afterAll, beforeAll, expect, it } from 'vitest';
import { openApp, type OpenedApp } from './open-app.ts';

let opened: OpenedApp;
beforeAll(async () => {
  opened = await openApp();
  const items = [{ item_id: 'blue', name: 'Blue <i>Tern</i>', model_id: 'tern-tn20', expected_value_minor: 2000 }];
  const body = { lot_id: 'lot-1', title: 'One Tern', seller: 'Harbour Clearance', price_minor: 2400, currency: 'GBP', items };
  await opened.ask('/api/events', { events: [{ kind: 'lot-bought', body }] });
});
afterAll(() => opened.close());

it('a report comes as a sheet and as a page, with the address of the unit under which the bench was asked', async () => {
  const sheet = await opened.ask('/api/items/1/report.pdf');
  expect([sheet.status, sheet.headers.get('content-type')]).toEqual([200, 'application/pdf']);
  const page = await opened.ask('/api/items/1/report.html');
  expect([page.status, page.headers.get('content-type')]).toEqual([200, 'text/html; charset=utf-8']);
  const text = await page.text();
  expect(text).toContain('Blue &lt;i&gt;Tern&lt;/i&gt;');
  expect(text).toContain('UN 3481');
});

it('pages to give away run apart from the bench, its own pages do not', async () => {
  const policy = async (path: string): Promise<string> => (await opened.ask(path)).headers.get('content-security-policy')!;
  for (const page of ['report.html', 'story.html']) {
    expect(await policy(`/api/items/1/${page}`)).toMatch(/default-src 'none'.*sandbox allow-scripts/);
  }
  expect(await policy('/api/items/1')).not.toContain('sandbox');
});

it('a story tells money and names only when it is asked to', async () => {
  const story = async (query = ''): Promise<string> => (await opened.ask(`/api/items/1/story.html${query}`)).text();
  expect(await story()).not.toMatch(/GBP|Harbour/);
  expect(await story('?money=yes&persons=yes')).toContain('Bought from Harbour Clearance for 24.00 GBP.');
  expect((await opened.ask('/api/items/1/story.html?money=maybe')).status).toBe(400);
  expect((await opened.ask('/api/items/9/story.html')).status).toBe(404);
});
