import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BenchView, ItemRow, PileView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const PLACES = [
  '/',
  '/scout',
  '/pile',
  '/drawer',
  '/books',
  '/models',
  '/models/tern-tn20',
  '/settings',
  '/add',
  '/calculators',
  '/bench/tern-8/opening',
];
const LOOKS = SCREENS.flatMap((screen) =>
  (['light', 'dark'] as const).map((colours) => ({ ...screen, colours, look: `${screen.name}, ${colours}` })),
);

let browser: Browser;
let server: ServerProcess;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

describe.each(LOOKS)('the demo bench on $look', (screen) => {
  it('is sound in every place, and on the bench of every unit that is still under work', async () => {
    const walk = await BenchWalk.begin(browser, server, screen, screen.colours);
    const pile = await walk.ask<PileView>('/api/pile');
    expect(pile.plan.length).toBeGreaterThan(4);
    for (const path of [...PLACES, ...pile.plan.map(({ row }) => `/bench/${row.id}`)]) {
      await walk.goto(path);
      await walk.expectAccessible();
    }
    await walk.end();
  });
});

it('is searched by words and filtered by status', async () => {
  const walk = await BenchWalk.begin(browser, server, SCREENS[0]!);
  const { rows } = await walk.ask<{ rows: ItemRow[] }>('/api/items?limit=200');
  const wanted = rows.find(({ kind, status }) => kind === 'unit' && status === 'sold')!;
  await walk.goto('/pile');
  await walk.page.getByRole('searchbox').first().fill(wanted.name);
  await walk.page
    .getByRole('link', { name: new RegExp(wanted.name) })
    .first()
    .waitFor();
  await walk.end();
});

it('goes away with one tap, and a newcomer gets a first advice for a unit of their own', async () => {
  const walk = await BenchWalk.begin(browser, server, SCREENS[1]!);
  await walk.goto('/');
  await walk.noted(() => walk.press(walk.page.locator('body'), 'Put the demo away'));
  expect(await walk.ask<BenchView>('/api/bench')).toMatchObject({ demo: 'put-away', items: 0 });
  await walk.goto('/');
  await walk.page.getByLabel('What is it').fill('Red pocket player');
  await walk.page.getByLabel(/^Paid/).fill('9.50');
  await walk.page.getByRole('group', { name: 'Starts', exact: true }).getByRole('radio', { name: 'Fails' }).check();
  await walk.noted(() => walk.press(walk.page.locator('main'), 'Add it and show what to do first'));
  await walk.page.waitForURL(/\/bench\//);
  await walk.next().waitFor();
  expect((await walk.next().innerText()).length).toBeGreaterThan(80);
  await walk.expectAccessible();
  await walk.end();
});
