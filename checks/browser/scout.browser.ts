import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import type { WatchView } from '../../src/bench/views/index.ts';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const LISTINGS = `title,price,postage,tax,seller,text,count,model,closes_at
Far too dear,400,4,0,Quick Lots,Untested,1,tern-tn20,
Blue one,14,3.50,0,Harbour Clearance,Turns on but silent.,1,tern-tn20,2026-12-01T18:30+00:00`;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('a listing weighed against the pile on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;

  beforeAll(async () => {
    server = await startServer(home, ['--empty']);
    walk = await BenchWalk.begin(browser, server, screen, screen.touch ? 'dark' : 'light');
    await walk.goto('/scout');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  it('has a ceiling, a curve, and other kinds in the same lot', async () => {
    await walk.page.getByLabel('Model', { exact: true }).selectOption('tern-tn20');
    await walk.page.getByLabel(/^Price asked/).fill('24');
    const lot = walk.region('To your pile');
    await lot
      .getByText(/up to /)
      .first()
      .waitFor({ timeout: 60_000 });
    expect(await lot.locator('.plot-line').count()).toBe(2);
    await walk.press(walk.region('The listing'), 'Another kind in the same lot');
    await walk.page.getByLabel('Also in the lot', { exact: true }).selectOption('corrie-cp4');
    await lot.getByText(/these 2 the plan/).waitFor({ timeout: 60_000 });
    await walk.expectAccessible();
  });

  it('keeps the pictures of the listing with it, and says which file is none', async () => {
    const buffer = await sharp({ create: { width: 320, height: 240, channels: 3, background: '#7a8' } })
      .jpeg()
      .toBuffer();
    const fields = walk.region('The listing');
    await fields.getByLabel('Add its pictures').setInputFiles([
      { name: 'front.jpg', mimeType: 'image/jpeg', buffer },
      { name: 'note.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('no picture') },
    ]);
    await fields.getByRole('img', { name: 'Listing, 1 of 1' }).waitFor();
    expect(await fields.getByRole('alert').innerText()).toContain('note.jpg');
    await walk.expectAccessible();
    await walk.noted(() => walk.press(walk.region('Then'), 'Keep it on the watch list'));
    const { listings } = await walk.ask<WatchView>('/api/scout');
    expect(listings.map(({ photos }) => photos.length)).toEqual([1]);
    await walk.page.getByRole('img', { name: 'Listing, 1 of 1' }).waitFor();
    await walk.page.getByLabel('Model', { exact: true }).selectOption('tern-tn20');
    await walk.page.getByLabel(/^Price asked/).fill('24');
  });

  it('says what to ask the seller', async () => {
    const card = walk.region('What to ask the seller');
    await card.getByText('What to ask the seller').click();
    await card.getByText(/^An answer is taken as right with/).waitFor({ timeout: 60_000 });
    expect(await card.getByRole('listitem').count()).toBeGreaterThan(3);
    await walk.expectAccessible();
  });

  it('stands beside others in a table, the best hour first, which can be saved', async () => {
    const section = walk.region('Compare listings');
    const fold = await walk.unfold(section, 'Paste a table of listings');
    await fold.getByLabel('A table of listings').fill(LISTINGS.replace('400,4', 'much,4'));
    await walk.press(fold, 'Compare them');
    await fold.getByText(/^Line 2, price/).waitFor();
    await fold.getByLabel('A table of listings').fill(LISTINGS);
    await walk.press(fold, 'Compare them');
    const rows = section.getByRole('table').getByRole('rowheader');
    await rows.first().waitFor({ timeout: 60_000 });
    expect((await rows.allInnerTexts()).map((text) => text.split('\n')[0])).toEqual(['Blue one', 'Far too dear']);
    const saved = await section.getByRole('link', { name: 'Save this table as CSV' }).getAttribute('href');
    expect(decodeURIComponent(saved!)).toContain('1,Blue one,Harbour Clearance,tern-tn20,1,17.50');
    await walk.expectAccessible();
    await walk.end();
  });
});
