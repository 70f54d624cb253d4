import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ItemFile } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { chargeOf } from '../rework/simulated-cell.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { serveBrokenTern } from './broken-tern.ts';

const CELL = { capacityAh: 1.2, amps: 0.5, fullV: 4.2, endA: 0.05, ohms: 0.12, stepS: 20 };
const comma = (value: number, digits: number): string => value.toFixed(digits).replace('.', ',');
/** A log with decimal commas and twenty minutes missing. */
const chargeLog = `Time [s];U [V];I [A]\n${chargeOf(CELL)
  .filter(({ seconds }) => seconds <= 2000 || seconds > 3200)
  .map(({ seconds, volts, amps }) => `${seconds};${comma(volts, 3)};${comma(amps, 3)}`)
  .join('\n')}\n`;
/** By straight lines up to 245 °C and down again, a row every two seconds. */
const heatLog = `time s,temp °C\n${Array.from({ length: 180 }, (_, i) => {
  const s = 2 * i;
  const celsius =
    s < 90
      ? 25 + (125 * s) / 90
      : s < 180
        ? 150 + (50 * (s - 90)) / 90
        : s < 240
          ? 200 + (45 * (s - 180)) / 60
          : Math.max(40, 245 - 1.5 * (s - 240));
  return `${s},${celsius.toFixed(1)}`;
}).join('\n')}\n`;
const csv = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('tests of a unit on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  const file = (): Promise<ItemFile> => walk.ask<ItemFile>('/api/items/tern');
  const tests = () => walk.region('Tests and logs');

  beforeAll(async () => {
    server = await serveBrokenTern(home);
    walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/bench/tern');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  it('a log of a charge is read with its commas, its gap is said, and its kind of cell is asked', async () => {
    const fold = await walk.unfold(tests(), 'Log of a charge or discharge');
    await fold.getByLabel('Log of a charge or discharge').setInputFiles(csv('charge.csv', chargeLog));
    await fold.getByText('It is never guessed').waitFor();
    expect(await fold.getByText(/20 min are missing/).count()).toBe(1);
    const how = await walk.unfold(fold, 'How it was read');
    expect(await how.innerText()).toMatch(/parted by semicolons, decimals by a comma/);
    await fold.getByLabel('Kind of cell, as its label has it').selectOption('li-ion-4.20');
    await fold.getByLabel('Printed on it, mA h').fill('1200');
    await fold.getByLabel('The charger gives, mA').fill('500');
    expect(await fold.getByRole('list', { name: 'Verdicts' }).innerText()).toMatch(/Port good.*\n*Charger good.*\n*Cell good/);
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, 'Note this log'));
    const { tests: noted, log, proof } = await file();
    expect(noted.at(-1)).toMatchObject({ test: 'charge-log', verdict: 'good' });
    expect(log.at(-1)!.text).toMatch(/^Tried Charges/);
    expect(proof.steps.find(({ id }) => id === 'charges-safely')!.measured.join(' ')).toContain('Voltage held 4.2 V');
  });

  it('a column that was taken wrongly can be put right', async () => {
    const wrong = chargeLog.replace('Time [s]', 'Zeit');
    const fold = await walk.unfold(tests(), 'Log of a charge or discharge');
    await fold.getByLabel('Log of a charge or discharge').setInputFiles(csv('odd.csv', wrong));
    const how = await walk.unfold(fold, 'How it was read');
    await fold.getByText(/not clear which column is which/).waitFor();
    await how.getByLabel('Time').selectOption('0');
    await fold.getByRole('list', { name: 'Verdicts' }).waitFor();
    await how.getByLabel('Voltage').selectOption('2');
    await how.getByLabel('Current').selectOption('1');
    await fold.getByText(/the wrong way round/).waitFor();
    await how.getByLabel('Voltage').selectOption('1');
    await how.getByLabel('Current').selectOption('2');
    await fold.getByRole('list', { name: 'Verdicts' }).waitFor();
    await walk.expectAccessible();
  });

  it('a log of heat asks for the solder and shows each limit with its number', async () => {
    const fold = await walk.unfold(tests(), 'Log of heat');
    await fold.getByLabel('Log of temperatures').setInputFiles(csv('heat.csv', heatLog));
    await fold.getByText('Say which solder was used').waitFor();
    await fold.getByLabel('Solder', { exact: true }).selectOption('SAC305');
    const limits = fold.getByRole('table');
    expect(await limits.last().innerText()).toMatch(/Hottest, against what the part bears\s+245 °C\s+at most 260 °C\s+passed/);
    await fold.getByLabel('The part bears, °C').fill('240');
    expect(await limits.last().innerText()).toMatch(/245 °C\s+at most 240 °C\s+missed/);
    await walk.expectAccessible();
    await walk.noted(() => walk.press(fold, 'Note this log'));
    expect((await file()).tests.at(-1)).toMatchObject({ test: 'heat-log', verdict: 'bad' });
  });

  it('the report and the story open as sheets and pages of their own', async () => {
    const picture = await sharp({ create: { width: 400, height: 300, channels: 3, background: '#26a' } })
      .jpeg()
      .toBuffer();
    const photos = walk.region('Photos');
    await photos.getByLabel('What they show').selectOption('front');
    await walk.noted(() =>
      photos
        .locator('input[type=file]')
        .first()
        .setInputFiles([{ name: 'one.jpg', mimeType: 'image/jpeg', buffer: picture }]),
    );
    const fold = await walk.unfold(walk.region('Grade and let go'), 'Condition report and story');
    const pdf = await fold.getByRole('link', { name: 'Report as PDF' }).getAttribute('href');
    const sheet = await fetch(server.url + pdf!);
    expect([sheet.headers.get('content-type'), new TextDecoder().decode((await sheet.arrayBuffer()).slice(0, 5))]).toEqual([
      'application/pdf',
      '%PDF-',
    ]);
    await fold.getByLabel('What it cost and brought').check();
    await walk.expectAccessible();
    const story = await fold.getByRole('link', { name: 'See the story' }).getAttribute('href');
    expect(story).toBe('/api/items/tern/story.html?money=yes');
    for (const [path, words] of [
      [story!, /Bought for 12\.00 GBP/],
      ['/api/items/tern/report.html', /Log of heat/],
    ] as const) {
      await walk.page.goto(server.url + path);
      expect(await walk.page.locator('main').innerText()).toMatch(words);
      expect(
        await walk.page
          .locator('img')
          .first()
          .evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth),
      ).toBeGreaterThan(0);
      await walk.expectAccessible();
    }
    await walk.end();
  });
});
