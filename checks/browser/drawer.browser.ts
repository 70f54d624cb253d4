import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { DrawerView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

let browser: Browser;
let server: ServerProcess;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home, []);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

const drawer = (walk: BenchWalk): Promise<DrawerView> => walk.ask<DrawerView>('/api/drawer');

describe.each(SCREENS)('the drawer on $name', (screen) => {
  it('takes an order in parts, and ends it when the rest does not come', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    const supplier = `Supplier ${screen.width}`;
    await walk.goto('/drawer');
    const orders = walk.region('Orders');
    const form = await walk.unfold(orders, 'Note an order');
    await form.getByLabel('Supplier').fill(supplier);
    await form.getByLabel('It should come by').fill('2026-01-05');
    await form.getByLabel('Name').fill(`Spring ${screen.width}`);
    await form.getByLabel('How many').fill('5');
    await form.getByLabel(/^Price of the line/).fill('10');
    await walk.noted(() => walk.press(form, 'It is ordered'));
    const order = await walk.unfold(orders, supplier);
    expect(await order.locator('summary').first().innerText()).toContain('late');
    await walk.press(order, 'Only a part of it came');
    await order.getByLabel(`Spring ${screen.width} that came`).fill('2');
    await walk.noted(() => walk.press(order, 'It arrived'));
    const end = await walk.unfold(order, 'It will not come');
    await end.getByLabel(/^Paid back/).fill('5');
    await walk.noted(() => walk.press(end, 'The order is cancelled'));
    const view = await drawer(walk);
    expect(view.orders.find((each) => each.supplier === supplier)).toMatchObject({
      state: 'cancelled',
      on_its_way_minor: 0,
      lines: [{ count: 5, came: 2 }],
    });
    expect(view.bags.find(({ name }) => name === `Spring ${screen.width}`)).toMatchObject({ count: 2, cost_minor: 400 });
    await walk.expectAccessible();
    await walk.end();
  });

  it('opens the bag whose label was scanned, and says so when there is none', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/drawer');
    const bag = (await drawer(walk)).bags.at(-1)!;
    await walk.goto(`/drawer/bag/${encodeURIComponent(bag.id)}`);
    const bags = walk.region('Bags of parts');
    const open = bags.locator('details[open]');
    expect(await open.count()).toBe(1);
    expect(await open.locator('summary').first().innerText()).toContain(bag.name);
    await walk.noted(async () => {
      await open.getByLabel('Where it lies').fill(`box ${screen.width}`);
      await walk.press(open, 'It lies here now');
    });
    expect((await drawer(walk)).bags.at(-1)!.place).toBe(`box ${screen.width}`);
    await walk.goto('/drawer/bag/lost');
    await bags.getByText('There is no bag of that label on this bench.').waitFor();
    await walk.expectAccessible();
    await walk.end();
  });

  it('shows what runs short with what it is for, and makes labels of what was chosen', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/drawer');
    const { short } = await drawer(walk);
    expect(short.length).toBeGreaterThan(0);
    await walk
      .region('Running short')
      .getByRole('row', { name: new RegExp(short[0]!.name) })
      .getByText(short[0]!.for[0]!)
      .waitFor();
    const labels = walk.region('Labels');
    await labels.getByLabel('Units and assemblies').fill('1, 2');
    await labels.getByLabel('Sheet', { exact: true }).selectOption('letter-10');
    const href = (await labels.getByRole('link', { name: 'Open the labels (PDF)' }).getAttribute('href'))!;
    const answer = await fetch(server.url + href);
    expect([answer.status, answer.headers.get('content-type')]).toEqual([200, 'application/pdf']);
    await labels.getByLabel('Units and assemblies').fill('');
    await labels.getByLabel(/^Every bag that holds something/).uncheck();
    await labels.getByText('Nothing to label is chosen.').waitFor();
    await walk.expectAccessible();
    await walk.end();
  });
});
