import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Model } from '../../src/bench/models/index.ts';
import type { ItemFile } from '../../src/bench/views/index.ts';
import { randomStream } from '../../src/core/numeric/index.ts';
import { loadModels } from '../../src/edges/models/load-models.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { OWN_POINTS, POINT_OF } from '../models/own-points.ts';
import { SeededPlayer } from '../models/seeded-player.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const MODELS = join(import.meta.dirname, '../../models');
const SEED = 'a player that nobody has modelled';
const MOST_STEPS = 25;

let browser: Browser;
let corrie: Model;
let player: SeededPlayer;
beforeAll(async () => {
  browser = await openBrowser();
  corrie = (await loadModels(MODELS)).models.get('corrie-cp4')!;
  const dead = SeededPlayer.candidates(corrie)
    .map((fault) => new SeededPlayer(corrie, fault))
    .filter((each) => each.fault.block === 'motor-drive' && !each.works('starts'));
  player = dead[Math.floor(randomStream(SEED)() * dead.length)]!;
});
afterAll(() => browser.close());

describe.each(SCREENS)('a Corrie CP-4 that nobody has modelled, on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  const unit = (): Promise<ItemFile> => walk.ask<ItemFile>('/api/items/unit');

  beforeAll(async () => {
    server = await startServer(home, ['--empty']);
    walk = await BenchWalk.begin(browser, server, screen, screen.touch ? 'dark' : 'light');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  it('gets a model from a photo and six answers', async () => {
    await walk.goto('/models/new');
    const { page } = walk;
    await page.getByLabel('What it is called').fill('Corrie of mine');
    const buffer = readFileSync(join(MODELS, 'corrie-cp4/photos/board-front.jpg'));
    await page.getByLabel('Add: photo of the front of the board').setInputFiles({ name: 'board.jpg', mimeType: 'image/jpeg', buffer });
    await page.getByRole('img', { name: /photo of the front/ }).waitFor();
    await page.getByRole('radio', { name: 'A battery, or its charger' }).check();
    await page.getByLabel('Voltage of its battery (V)').fill('3');
    await page.getByRole('group', { name: 'Display' }).getByRole('radio', { name: 'None' }).check();
    await page.getByRole('group', { name: 'Sound' }).getByRole('radio', { name: 'Only a socket' }).check();
    await walk.noted(() => page.getByRole('button', { name: 'Begin this model' }).click());
    await page.waitForURL('**/models/corrie-of-mine');
  });

  it('is at level 1 once good boards were measured at a few points', async () => {
    const fold = await walk.unfold(walk.region('Tell more of it'), 'A point to measure');
    for (const { name, block } of OWN_POINTS) {
      await fold.getByLabel('Name of the point').fill(name);
      await fold.getByLabel('Block that it tells of').selectOption(block);
      await fold.getByLabel('Measured in').selectOption('volts');
      await fold.getByLabel('Power').selectOption('battery');
      await fold.getByLabel('Opened so far').selectOption('open');
      await walk.noted(() => walk.press(fold, 'Add this point'));
    }
    const good = walk.region('Known-good boards');
    for (const { board, point, value } of corrie.readings.filter((reading) => ['good-1', 'good-2'].includes(reading.board))) {
      const own = Object.keys(POINT_OF).find((id) => POINT_OF[id] === point);
      if (own === undefined) continue;
      await good.getByLabel('The board').fill(board);
      await good.getByLabel('Point', { exact: true }).selectOption(own);
      await good.getByLabel(/^The meter shows/).fill(String(value));
      await walk.noted(() => walk.press(good, 'Teach this reading'));
    }
    await walk.page.getByText(/^Level 1:/).waitFor();
    await walk.expectAccessible();
  });

  it('shows on the Bench where a seeded fault is', async () => {
    const items = [{ item_id: 'unit', name: 'Silent one', model_id: 'corrie-of-mine', expected_value_minor: 1000 }];
    const body = { lot_id: 'lot', title: 'One', seller: 'Quick Lots', price_minor: 500, currency: 'GBP', items };
    await fetch(`${server.url}/api/events`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ events: [{ kind: 'lot-bought', body }] }),
    });
    await walk.goto('/bench/unit');
    await walk.noted(() => walk.press(walk.next(), 'It is here'));
    let steps = 0;
    for (; steps < MOST_STEPS && (await unit()).advice.do === 'check'; steps++) await answer();
    const { advice, belief } = await unit();
    expect(advice.do).toBe('remedy');
    expect(belief.blocks.toSorted((a, b) => b.chance - a.chance)[0]!.id).toBe(player.block);
    expect(steps).toBeGreaterThan(3);
    await walk.expectAccessible();
  });

  /** What the unit with the fault does is put into the card that asks for it. */
  async function answer(): Promise<void> {
    const { advice } = await unit();
    const { kind, target } = advice.check!;
    const card = walk.next();
    await card.locator('#what-next-headline', { hasText: advice.headline }).waitFor();
    if (kind === 'try') return walk.noted(() => walk.press(card, player.works(target) ? 'Works' : 'Fails'));
    if (kind === 'look') return walk.noted(() => walk.press(card, 'Nothing wrong'));
    await card.locator('input.meter').fill(String(player.volts(POINT_OF[target]!)));
    return walk.noted(() => walk.press(card, 'Note the reading'));
  }

  it('did all that without a word on the console', () => walk.end());
});
