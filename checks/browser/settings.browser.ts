import type { Browser } from 'playwright-core';
import { mkdirSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

let browser: Browser;
let server: ServerProcess;
const { home, remove } = temporaryHome();
const elsewhere = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home, ['--empty']);
  const body = { title: 'Two dead Terns', lot_id: 'lot-1', seller: 'Harbour Clearance', price_minor: 2400, currency: 'GBP', items: [] };
  const stored = await fetch(`${server.url}/api/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({
      events: [
        {
          kind: 'lot-bought',
          body: { ...body, items: [{ item_id: 'blue', name: 'Blue Tern', model_id: 'tern-tn10', expected_value_minor: 2000 }] },
        },
      ],
    }),
  });
  expect(stored.status).toBe(200);
  mkdirSync(join(elsewhere.home, 'stick'), { recursive: true });
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
  elsewhere.remove();
});

describe.each(SCREENS)('backups on $name', (screen) => {
  it('are made at the press of a button, tried again, and sent to another folder', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/settings');
    const backup = walk.region('Backup');
    await walk.press(backup, 'Make a backup now');
    await walk.page.getByText(/Backup made\. It opens to the same bench: 1 event, 0 photos, hash [0-9a-f]{12}/).waitFor();
    await walk.unfold(backup, /to bring back/);
    await walk.press(backup, /^Try it: the backup of/);
    await walk.page.getByText(/^It opens to the same bench: 1 event/).waitFor();
    const folder = backup.getByLabel('Folder of the backups');
    await folder.fill(join(elsewhere.home, 'stick'));
    await walk.press(backup, 'Save where backups go');
    await backup.getByText(join(elsewhere.home, 'stick')).waitFor();
    expect(await backup.innerText()).not.toContain('same disk');
    await folder.fill('');
    await walk.press(backup, 'Save where backups go');
    await backup.getByText('same disk as the bench').waitFor();
    await walk.expectAccessible();
    await walk.end();
  });
});
