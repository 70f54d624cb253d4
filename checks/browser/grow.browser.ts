import { readFileSync } from 'node:fs';
import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { GrowthView, ItemFile, PooledPointView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

interface Growth {
  readonly growth: GrowthView;
  readonly points: readonly PooledPointView[];
}

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('a model of one’s own on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  const post = (kind: string, body: object): Promise<Response> =>
    fetch(`${server.url}/api/events`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ events: [{ kind, body }] }),
    });
  const growth = (): Promise<Growth> => walk.ask<Growth>('/api/models/reed-r1/growth');

  beforeAll(async () => {
    server = await startServer(home, ['--empty']);
    walk = await BenchWalk.begin(browser, server, screen, screen.touch ? 'dark' : 'light');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  it('begins with a name, a photo and six answers', async () => {
    await walk.goto('/models');
    await walk.page.getByRole('link', { name: 'New model' }).click();
    await walk.settled();
    await walk.page.getByLabel('What it is called').fill('Reed R1');
    const buffer = await sharp({ create: { width: 640, height: 480, channels: 3, background: '#2a6' } })
      .jpeg()
      .toBuffer();
    await walk.page.getByLabel('Add: photo of the front of the board').setInputFiles({ name: 'front.jpg', mimeType: 'image/jpeg', buffer });
    await walk.page.getByRole('img', { name: /photo of the front/ }).waitFor();
    await walk.page.getByLabel('Voltage of its battery (V)').fill('3');
    await walk.page
      .getByRole('group', { name: 'A slot for cartridges, tapes or cards' })
      .getByRole('radio', { name: 'No', exact: true })
      .check();
    await walk.expectAccessible();
    await walk.noted(() => walk.page.getByRole('button', { name: 'Begin this model' }).click());
    await walk.page.waitForURL('**/models/reed-r1');
    await walk.region('How it grew').waitFor();
    const { growth: told } = await growth();
    expect(told).toMatchObject({ version: 2, from: { kind: 'answers' }, photos: [{ side: 'front' }] });
  });

  it('says of each place where it comes from, and takes what is typed', async () => {
    const prices = walk.region('Prices');
    expect(await prices.getByText('inherited').count()).toBe(2);
    expect(await prices.getByText('typed').count()).toBe(1);
    const fold = await walk.unfold(walk.region('Tell more of it'), 'Prices, cell, board, about it');
    await fold.getByLabel(/^A working one/).fill('70');
    await walk.noted(() => walk.press(fold, 'Keep what I changed'));
    await prices.getByText('£70.00').waitFor();
    await expect.poll(() => prices.getByText('typed').count()).toBe(2);
    expect(await walk.region('Functions and what they need').getByText('Reads the slot').count()).toBe(0);
    await walk.expectAccessible();
  });

  it('gets a point, and learns what good boards show there', async () => {
    const fold = await walk.unfold(walk.region('Tell more of it'), 'A point to measure');
    await fold.getByLabel('Name of the point').fill('Rail 3V3');
    await fold.getByLabel('Measured in').selectOption('ohms');
    await walk.noted(() => walk.press(fold, 'Add this point'));
    const good = walk.region('Known-good boards');
    for (const [board, shown] of [
      ['good-1', '4k7'],
      ['good-2', '4.9 k'],
    ] as const) {
      await good.getByLabel('The board').fill(board);
      await good.getByLabel('Point', { exact: true }).selectOption({ label: 'Rail 3V3' });
      await good.getByLabel(/^The meter shows/).fill(shown);
      await walk.noted(() => walk.press(good, 'Teach this reading'));
    }
    await good.getByText(/4.8 kΩ ± .* on 2 boards/).waitFor();
    await walk.expectAccessible();
  });

  it('is there for a unit at once, which teaches it with one tap', async () => {
    const items = [{ item_id: 'unit', name: 'Grey one', model_id: 'reed-r1', expected_value_minor: 1000 }];
    const lot = { lot_id: 'lot', title: 'One', seller: 'Quick Lots', price_minor: 500, currency: 'GBP', items };
    await post('lot-bought', lot);
    await post('reading-taken', { item_id: 'unit', point: 'SPEAKER-R', mode: 'ohms', value: 8.1 });
    await walk.goto('/bench/unit');
    await walk.next().waitFor();
    const fold = await walk.unfold(walk.region('Known-good readings'), 'It is not proved yet');
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, /^Teach 1 reading/));
    const { points } = await growth();
    expect(points.find(({ point }) => point === 'SPEAKER-R')).toMatchObject({ middle: 8.1, boards: [{ board: '#1 Grey one' }] });
    await expect.poll(() => walk.region('Known-good readings').count()).toBe(0);
  });

  it('is given away with all that leaves listed, and taken in again with conflicts side by side', async () => {
    await walk.goto('/models/reed-r1');
    const give = await walk.unfold(walk.region('Share it'), 'Give this model away');
    await give.getByLabel('Your name in it').fill('Marsh Lane');
    await give.getByText('Your name in it: Marsh Lane').waitFor();
    await give.getByText('Rail 3V3').first().waitFor();
    await walk.expectAccessible();
    const saving = walk.page.waitForEvent('download');
    await give.getByRole('link', { name: 'Save the bundle' }).click();
    const file = await (await saving).path();
    await walk.noted(() =>
      post('model-fact-set', { model_id: 'reed-r1', section: 'head', id: 'prices', field: 'working', value: 8000 }).then(() => undefined),
    );
    await walk.goto('/models/reed-r1');
    const merge = await walk.unfold(walk.region('Share it'), 'Take in what another bench knows of it');
    await merge
      .getByLabel('The bundle (.zip)')
      .setInputFiles({ name: 'reed.zip', mimeType: 'application/zip', buffer: readFileSync(file) });
    await merge.getByText(/Different: 1 place/).waitFor();
    await merge.getByRole('radio', { name: 'prices working: theirs, 7000' }).check();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(merge, /^Take in \d+ facts?/));
    await walk.region('Prices').getByText('typed by Marsh Lane').waitFor();
  });

  it('comes to another bench as a new model from the bundle', async () => {
    const given = await fetch(`${server.url}/api/models/reed-r1/bundle?author=Marsh+Lane`);
    await walk.goto('/models/new');
    await walk.page.getByRole('radio', { name: 'A bundle from someone' }).check();
    const buffer = Buffer.from(await given.arrayBuffer());
    await walk.page.getByLabel('The bundle (.zip)').setInputFiles({ name: 'reed.zip', mimeType: 'application/zip', buffer });
    await walk.page.getByText(/^Reed R1 by Marsh Lane, \d+ facts/).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.page.getByRole('button', { name: 'Begin this model' }).click());
    await walk.page.waitForURL('**/models/reed-r1-2');
    await walk
      .region('Known-good boards')
      .getByText(/4.8 kΩ ± .* on 2 boards/)
      .waitFor();
  });

  it('leaves what was sold with the version that it was judged with, until it is judged again', async () => {
    await post('scrapped', { item_id: 'unit', reason: 'burnt' });
    await post('model-fact-set', { model_id: 'reed-r1', section: 'head', id: 'about', value: 'Grew on.' });
    await walk.goto('/bench/unit');
    const before = (await walk.ask<ItemFile>('/api/items/unit')).model;
    expect(before.newest_version).toBe(before.version! + 1);
    await walk.noted(() => walk.press(walk.page.locator('main'), `Judge by version ${before.newest_version}`));
    expect((await walk.ask<ItemFile>('/api/items/unit')).model.version).toBe(before.newest_version);
    await walk.expectAccessible();
  });

  it('did all that without a word on the console', () => walk.end());
});
