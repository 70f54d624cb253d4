import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { PlanView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('the plan of the pile on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;

  beforeAll(async () => {
    server = await startServer(home);
    walk = await BenchWalk.begin(browser, server, screen, screen.touch ? 'dark' : 'light');
    await walk.ask('/api/plan?wait=yes');
    await walk.goto('/pile');
    await plan().getByText('Decide otherwise').first().waitFor();
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  const plan = () => walk.region('The plan');
  const view = () => walk.ask<PlanView>('/api/plan?wait=yes');

  it('says what to do with each thing, what it earns, and breaks no rule of access', async () => {
    const { plan: made } = await view();
    expect(await plan().getByText('Decide otherwise').count()).toBe(made!.items.length);
    const worth = walk.region('What it earns');
    expect(await worth.getByText('More than each unit on its own').count()).toBe(1);
    expect(await worth.locator('.plot-bar').count()).toBe(20);
    await walk.expectAccessible();
  });

  it('takes a decision at a cost that is said before, and gives it back', async () => {
    const { plan: made } = await view();
    const { name } = made!.items[0]!;
    const first = plan().locator('.plan-line', { has: walk.page.getByText(name, { exact: true }) });
    await first.getByText('Decide otherwise').click();
    await first.getByText(/^The whole plan would earn .* less\.$/).waitFor({ timeout: 30_000 });
    await walk.expectAccessible();
    await walk.noted(() => walk.press(first, 'Decide so'));
    const chosen = (await view()).plan!.items.find((item) => item.name === name)!;
    expect(chosen.choices).toHaveLength(1);
    expect(chosen.choices[0]!.regret_minor).not.toBeNull();
    await first.getByText(/^you chose: /).waitFor({ timeout: 30_000 });
    await walk.noted(() => walk.press(first, 'Do as planned again'));
    expect((await view()).plan!.items.find((item) => item.name === name)!.choices).toEqual([]);
  });

  it('goes by the hours and the suppliers that the person sets', async () => {
    const wishes = await walk.unfold(walk.region('What the plan goes by'), 'Hours, money and risk');
    await wishes.getByLabel('Hours a week').fill('1');
    await wishes.getByLabel('Planned for, weeks').fill('1');
    await walk.noted(() => walk.press(wishes, 'Plan by this'));
    const less = await view();
    expect(less.wishes).toMatchObject({ hours_a_week: 1, weeks: 1 });
    expect(less.plan!.weeks.every(({ minutes }) => minutes <= 60)).toBe(true);
    const suppliers = await walk.unfold(walk.region('What the plan goes by'), /^Suppliers/);
    await suppliers.getByLabel('Supplier', { exact: true }).fill('Gull Parts');
    await suppliers.getByLabel(/^At, each/).fill('1.20');
    await walk.noted(() => walk.press(suppliers, 'Keep this offer'));
    expect((await view()).suppliers).toMatchObject([{ name: 'Gull Parts', offers: [{ unit_minor: 120, least: 1 }] }]);
    await walk.expectAccessible();
    await walk.end();
  });
});
