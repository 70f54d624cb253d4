import type { Browser } from 'playwright-core';
import sharp from 'sharp';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ItemFile } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { simulatedMeter } from '../interface/simulated-meter.ts';
import { chargeOf } from '../rework/simulated-cell.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const phone = SCREENS.find(({ touch }) => touch)!;
let browser: Browser;
let server: ServerProcess;
let walk: BenchWalk;
let meter: Awaited<ReturnType<typeof simulatedMeter>>;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home, ['--empty']);
  meter = await simulatedMeter('3.86512');
  await note([
    {
      kind: 'lot-bought',
      body: {
        lot_id: 'lot-1',
        title: 'Pocket player that does not charge',
        seller: 'Larkhill clearances',
        price_minor: 1200,
        currency: 'GBP',
        items: [{ item_id: 'tern', name: 'Grey Tern', model_id: 'tern-tn20', expected_value_minor: 4000 }],
      },
    },
    { kind: 'item-received', body: { item_id: 'tern' } },
    { kind: 'trial-done', body: { item_id: 'tern', function: 'charges', outcome: 'fails', minutes: 2 } },
  ]);
  walk = await BenchWalk.begin(browser, server, phone);
  await walk.goto('/bench/tern');
});
afterAll(async () => {
  await browser.close();
  await meter.close();
  await server.stop();
  remove();
});

const file = (): Promise<ItemFile> => walk.ask<ItemFile>('/api/items/tern');
const note = async (events: readonly object[]): Promise<void> => {
  const answer = await fetch(`${server.url}/api/events`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ events }),
  });
  expect(answer.status, await answer.text()).toBe(200);
};
async function photograph(name: string, hue: string): Promise<void> {
  const buffer = await sharp({ create: { width: 800, height: 600, channels: 3, background: hue } })
    .jpeg()
    .toBuffer();
  const photos = walk.region('Photos');
  await photos.getByLabel('What they show').selectOption('front');
  await walk.noted(() =>
    photos
      .locator('input[type=file]')
      .first()
      .setInputFiles([{ name, mimeType: 'image/jpeg', buffer }]),
  );
}
/** Step by step on the page beside the iron, every screw counted as it comes or goes, and back to the bench. */
async function open(way: 'in' | 'back'): Promise<void> {
  const main = walk.page.locator('main');
  const [button, end] = way === 'in' ? ['Done', 'You are there'] : ['It is back', 'It is closed'];
  await walk.page.getByRole('link', { name: 'Open or close it' }).click();
  await walk.settled();
  await walk.page.getByLabel('What for').selectOption(way === 'in' ? 'stage:board-out' : 'stage:closed');
  await walk.settled();
  const headline = main.locator('h2.headline').first();
  while ((await headline.innerText()) !== end) await walk.noted(() => walk.press(main, button!));
  await walk.expectAccessible();
  await walk.goto('/bench/tern');
}

describe('one unit on a phone, from opening it to its report', () => {
  it('is photographed, opened step by step, and looked at', async () => {
    await photograph('before.jpg', '#666');
    await open('in');
    expect((await file()).stage).toBe('board-out');
    const saw = await walk.unfold(walk.region('Note something you did'), 'Saw something');
    await saw.getByLabel('Place').selectOption('charge-port');
    const more = saw.getByRole('button', { name: 'Something else …' });
    if ((await saw.getByRole('button', { name: 'Dirty', exact: true }).count()) === 0) await more.click();
    await walk.noted(() => walk.press(saw, 'Dirty'));
    expect((await file()).findings.at(-1)).toMatchObject({ place: 'charge-port', sees: 'dirty' });
  });

  it('is measured with a meter on the network, and the number pad is there all the same', async () => {
    const measured = await walk.unfold(walk.region('Note something you did'), 'Measured a point');
    await measured.getByRole('combobox', { name: 'Point' }).selectOption('VBAT');
    expect(await measured.getByRole('group', { name: 'Number pad' }).count()).toBe(1);
    const network = await walk.unfold(measured, 'From a meter on the network');
    await network.getByLabel('Address of the meter').fill(meter.address);
    await walk.press(network, 'Read it');
    await network.getByText(/^Read from Invented Bench Works/).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(measured, 'Note the reading'));
    expect((await file()).readings.at(-1)).toMatchObject({ point: 'VBAT', value: 3.86512 });
  });

  it('is mended, closed again with every screw, and photographed', async () => {
    const work = await walk.unfold(walk.region('Note something you did'), 'Did some work');
    await work.getByRole('combobox').first().selectOption('clean-charge-port');
    await work.getByRole('radio', { name: 'Mended', exact: true }).check();
    await walk.noted(() => walk.press(work, 'Done'));
    await open('back');
    expect((await file()).stage).toBe('closed');
    await photograph('after.jpg', '#2a6');
  });

  it('is charged under watch, and the log of it stands in the proof', async () => {
    const cell = { capacityAh: 1.2, amps: 0.5, fullV: 4.2, endA: 0.05, ohms: 0.12, stepS: 20 };
    const log = `time s,V,A\n${chargeOf(cell)
      .map(({ seconds, volts, amps }) => `${seconds},${volts.toFixed(3)},${amps.toFixed(3)}`)
      .join('\n')}`;
    const fold = await walk.unfold(walk.region('Tests and logs'), 'Log of a charge or discharge');
    await fold
      .getByLabel('Log of a charge or discharge')
      .setInputFiles({ name: 'charge.csv', mimeType: 'text/csv', buffer: Buffer.from(log) });
    await fold.getByLabel('Kind of cell, as its label has it').selectOption('li-ion-4.20');
    await fold.getByLabel('Printed on it, mA h').fill('1200');
    await walk.noted(() => walk.press(fold, 'Note this log'));
    expect((await file()).tests.at(-1)).toMatchObject({ test: 'charge-log', verdict: 'good', before_work: false });
  });

  it('is not ready with a step left out, and may leave with one that was signed with its reason', async () => {
    const { proof } = await file();
    const touched = proof.steps.find(({ id }) => id === 'works.charges')!;
    expect(touched.because.join(' ')).toContain('charging port');
    const [last, ...rest] = proof.steps.toReversed();
    for (const step of rest.toReversed()) {
      const fold = await walk.unfold(walk.region('Proof'), step.name);
      await walk.noted(() => walk.press(fold, 'Pass'));
    }
    const refused = await fetch(`${server.url}/api/events`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ events: [{ kind: 'graded', body: { item_id: 'tern', scale: 'salvor-1', grade: 'B' } }] }),
    });
    expect([refused.status, ((await refused.json()) as { code: string }).code]).toEqual([409, 'proof-incomplete']);
    const fold = await walk.unfold(walk.region('Proof'), last!.name);
    await fold.getByLabel('Reason').fill('the door is taped until a new one comes');
    await walk.noted(() => walk.press(fold, /^Sign off/));
    expect((await file()).proof.ready).toBe(true);
  });

  it('is graded by the scale, and its report says all of it', async () => {
    const grade = await walk.unfold(walk.region('Grade and let go'), 'Grade');
    await grade.getByText(/^By the scale salvor-1: grade D, held back by function/).waitFor();
    await walk.noted(() => walk.press(grade, /^Grade D/));
    const fold = await walk.unfold(walk.region('Grade and let go'), 'Condition report and story');
    await walk.page.goto(server.url + (await fold.getByRole('link', { name: 'Report as a page' }).getAttribute('href'))!);
    const said = await walk.page.locator('main').innerText();
    for (const words of [
      /Before the work[\s\S]*After the work/,
      /Clean the charging port/,
      /not passed, signed off: the door is taped until a new one comes/,
      /Capacity 1\.\d+ A h/,
      /UN 3481/,
      /D[\s\S]*scale salvor-1/,
    ])
      expect(said).toMatch(words);
    expect(await walk.page.locator('figure img').count()).toBe(2);
    expect(await walk.page.getByRole('img', { name: 'Address of the file of this unit' }).count()).toBe(1);
    await walk.expectAccessible();
    await walk.end();
  });
});
