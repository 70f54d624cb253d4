import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CALCULATORS } from '../../src/bench/calculators/index.ts';
import type { ItemFile, NetView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { startBoardServer, type BoardServer } from './board-server.ts';
import { brokenTern } from './broken-tern.ts';

let browser: Browser;
let server: BoardServer;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startBoardServer(home);
  server.record(brokenTern());
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

describe.each(SCREENS)('calculators on $name', (screen) => {
  it('each answers as it is opened, and says where it is from', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    for (const { id, name } of CALCULATORS) {
      await walk.goto(`/calculators?tool=${id}`);
      const sheet = walk.region(name);
      await walk.unfold(sheet, 'Formula and source');
      expect(await sheet.locator('.answer').first().innerText()).toMatch(/\d.*Source: \S.*Holds for: \S/s);
      await walk.expectAccessible();
    }
    await walk.end();
  });

  it('ask which of two sizes is meant, and take the current of a net', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/calculators?tool=part-code');
    const code = walk.region('What the mark on a part says');
    await code.getByLabel('It is', { exact: true }).selectOption('size');
    await code.getByLabel('The mark, or the name of the size').fill('0603');
    expect(await code.getByRole('alert').innerText()).toContain('is the name of two chips');
    await walk.expectAccessible();
    await code.getByLabel('The name is').selectOption('metric');
    expect(await code.locator('.answer-number').allInnerTexts()).toEqual(['0.6 mm (0.54 mm to 0.66 mm)', '0.3 mm (0.27 mm to 0.33 mm)']);

    const { nets } = await walk.ask<{ nets: NetView[] }>('/api/models/tern-tn20/nets');
    const vsys = nets.find(({ net }) => net === 'vsys')!;
    await walk.goto('/calculators?tool=wire');
    const wire = walk.region('Wire for a net');
    await walk.unfold(wire, 'Current of a net of a known board');
    await wire.getByLabel('Model').selectOption('tern-tn20');
    await wire.getByLabel('Net').selectOption('vsys');
    expect(Number(await wire.getByLabel('Current, A').inputValue())).toBeCloseTo(vsys.current_a, 2);
    expect(await wire.innerText()).toContain(vsys.state);
    await walk.expectAccessible();
    await walk.end();
  });

  it('stand at the recipe of a remedy, filled in with the worst current of its nets', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    const { advice } = await walk.ask<ItemFile>('/api/items/tern');
    const wired = [advice.remedy, ...advice.other_remedies].find((remedy) => remedy?.recipe === 'replace-two-terminal');
    expect(wired).toMatchObject({ id: expect.any(String), recipe: 'replace-two-terminal' });
    await walk.goto('/bench/tern');
    if (wired!.id !== advice.remedy?.id) {
      await walk.unfold(walk.next(), 'Do something else');
      await walk.press(walk.next(), new RegExp(`^${wired!.name.replaceAll(/[()]/g, '\\$&')}`));
    }
    const card = walk.page.locator('#what-next');
    const recipe = await walk.unfold(card, 'Step by step: replace a part with two terminals');
    await recipe.getByLabel('Solder', { exact: true }).selectOption('Sn63Pb37');
    expect(await recipe.innerText()).toContain('fine tip 285 to 310 °C');
    expect(await recipe.innerText()).toContain('Common practice, no source');
    await walk.expectAccessible();
    await recipe.getByRole('link', { name: 'Read the mark' }).click();
    await walk.settled();
    expect(walk.page.url()).toMatch(/tool=part-code&model=tern-tn20&net=\w+&current_a=0\.\d+/);
    await walk.end();
  });
});
