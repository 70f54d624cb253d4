import type { Browser, BrowserContext, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { AxeBuilder } from './axe.ts';
import { SCREENS } from './bench-walk.ts';

let browser: Browser;
let server: ServerProcess;
let lanPort: string;
const { home, remove } = temporaryHome();

const post = (path: string, body: object): Promise<Response> =>
  fetch(server.url + path, { method: 'POST', headers: { 'content-type': 'application/json' }, body: JSON.stringify(body) });

beforeAll(async () => {
  // As a phone on which the certificate was installed.
  browser = await openBrowser(['--ignore-certificate-errors']);
  server = await startServer(home, ['--empty', '--lan', '--lan-port', '0']);
  const { network } = (await (await fetch(`${server.url}/api/devices`)).json()) as { network: { urls: string[] } };
  lanPort = new URL(network.urls[0]!).port;
  const items = [{ item_id: 'blue', name: 'Blue Tern', model_id: 'tern-tn10', expected_value_minor: 2000 }];
  const lot = { lot_id: 'lot-1', title: 'One', seller: 'Harbour Clearance', price_minor: 2400, currency: 'GBP', items };
  const stored = await post('/api/events', {
    events: [
      { kind: 'lot-bought', body: lot },
      { kind: 'item-received', body: { item_id: 'blue' } },
    ],
  });
  expect(stored.status).toBe(200);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

async function joined(context: BrowserContext, name: string): Promise<Page> {
  const { links } = (await (await post('/api/devices/invites', { role: 'bench' })).json()) as { links: { url: string }[] };
  const page = await context.newPage();
  await page.goto(links[0]!.url);
  await page.getByLabel('Name of this device').fill(name);
  await page.getByRole('button', { name: 'Join' }).click();
  await page.locator('main h1').first().waitFor();
  return page;
}

const logged = async (): Promise<{ device: string; kind: string }[]> =>
  (
    (await (await fetch(`${server.url}/api/events?limit=1000`)).json()) as { events: { event: { device: string; kind: string } }[] }
  ).events.map(({ event }) => event);

describe.each(SCREENS)('a device on $name whose bench goes away', ({ width, height, touch }) => {
  it('opens its pages all the same, keeps what is noted and says so, and delivers it once when the bench is back', async () => {
    const context = await browser.newContext({
      ignoreHTTPSErrors: true,
      viewport: { width, height },
      hasTouch: touch,
      reducedMotion: 'reduce',
    });
    const page = await joined(context, `away-${width}`);
    await page.evaluate(() => navigator.serviceWorker.ready.then(() => undefined));
    await page.goto(new URL('/bench/blue', page.url()).href);
    await page.locator('#what-next').waitFor();
    await page.reload();
    await page.locator('#what-next').waitFor();

    await server.stop();
    await page.reload();
    await page.locator('#what-next').waitFor();
    expect(await page.locator('main h1').first().innerText()).toContain('Blue Tern');
    await page.getByRole('textbox', { name: 'Note', exact: true }).fill('noted in the cellar');
    await page.getByRole('button', { name: 'Note it' }).click();
    const badge = page.getByRole('button', { name: '1 not delivered' });
    await badge.click();
    await page.getByRole('region', { name: 'Not delivered yet' }).waitFor();
    expect(await new AxeBuilder(page).violations()).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)).toBeLessThanOrEqual(0);

    server = await startServer(home, ['--empty', '--lan', '--lan-port', lanPort]);
    await badge.waitFor({ state: 'detached', timeout: 20_000 });
    expect((await logged()).filter(({ device, kind }) => device === `away-${width}` && kind === 'note-written')).toHaveLength(1);
    await context.close();
  });
});
