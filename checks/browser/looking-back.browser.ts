import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { BreakdownView, CalibrationView, ItemRow, LearnedBundle, LearnedView, ListingTextView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

let browser: Browser;
const home = temporaryHome();
let server: ServerProcess;

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home.home);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  home.remove();
});

describe.each(SCREENS)('looking back on $name', (screen) => {
  let walk: BenchWalk;
  beforeAll(async () => {
    walk = await BenchWalk.begin(browser, server, screen);
  });

  it('holds what was advised against what came, with the lesson of the best and the worst', async () => {
    await walk.goto('/books');
    await walk.page.getByRole('link', { name: 'How good the advice was' }).click();
    const said = walk.region('Did it come as it was said?');
    await said.getByRole('heading', { name: 'That it works after a remedy' }).waitFor();
    await walk.page.getByText(/^Looking back/).waitFor({ state: 'detached' });
    const view = await walk.ask<CalibrationView>('/api/calibration');
    expect(view.judged).toBe(view.to_judge);
    const remedy = view.forecasts.find(({ about }) => about === 'remedy')!;
    const rows = said.getByRole('region', { name: /^That it works after a remedy/ }).locator('tbody tr');
    expect(await rows.count()).toBe(remedy.bands.length);
    await walk.region('What the decisions teach').getByText(view.worst[0]!.lesson).first().waitFor();
    const prices = await walk.unfold(walk.region('Price, minutes and parts'), /^Price of one sold/);
    await prices.getByRole('row', { name: new RegExp(view.price[0]!.name) }).waitFor();
    await walk.expectAccessible();
  });

  it('shows where the profit comes from, by model, seller and remedy', async () => {
    await walk.goto('/books');
    await walk.page.getByRole('link', { name: 'Where the profit comes from' }).click();
    await walk.settled();
    const view = await walk.ask<BreakdownView>('/api/books/breakdown');
    for (const [region, lines] of [
      ['By model', view.by_model],
      ['By seller', view.by_seller],
      ['By remedy', view.by_remedy],
    ] as const)
      expect(await walk.region(region).locator('tbody tr').count()).toBe(lines.length);
    await walk.expectAccessible();
  });

  it('writes the text of a listing from what is on file, in words that the person keeps', async () => {
    const { rows } = await walk.ask<{ rows: ItemRow[] }>('/api/items?limit=200');
    const unit = rows.find(({ status, kind }) => kind === 'unit' && (status === 'proved' || status === 'listed'))!;
    await walk.goto(`/bench/${unit.id}`);
    const part = await walk.unfold(walk.region('Grade and let go'), 'Text, photos and post for a listing');
    await part.locator('pre', { hasText: 'Tested and working: ' }).waitFor();
    await part.getByText(/ g packed in a padded box/).waitFor();
    const own = await walk.unfold(part, 'Your words for all listings');
    const words = `From ${screen.name}: fully tested {model}.`;
    await own.getByRole('textbox', { name: 'Your words for all listings' }).fill(words);
    await walk.press(own, 'Put in {works}');
    await walk.noted(() => walk.press(own, 'Keep these words'));
    await part.getByText('Your own words say “tested” of every unit').waitFor();
    const view = await walk.ask<ListingTextView>(`/api/items/${unit.id}/listing-text`);
    expect(view.template).toBe(`${words}\n{works}`);
    expect(view.text.startsWith(`From ${screen.name}: fully tested `)).toBe(true);
    await walk.unfold(part, 'Photos for it');
    await walk.expectAccessible();
  });

  it('gives away what was learned without money and names, and takes in such a file at a weight', async () => {
    await walk.goto('/books');
    const learned = walk.region('What was learned');
    const share = await walk.unfold(learned, 'Give away what was learned');
    const download = walk.page.waitForEvent('download');
    await share.getByRole('link', { name: 'Save what was learned of Tern TN-10', exact: true }).click();
    expect((await download).suggestedFilename()).toBe('learned-tern-tn10.json');
    const bundle = await walk.ask<LearnedBundle>('/api/models/tern-tn10/learned');
    expect(bundle.numbers.map(({ about }) => about)).not.toContain('price');
    const take = await walk.unfold(learned, 'Take in what another bench has learned');
    const choose = (name: string, text: string) =>
      take.getByLabel('The file').setInputFiles({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
    await choose('wrong.json', '{"format":"other"}');
    await walk.press(take, 'Take it in');
    await walk.page.getByText('Not taken in: it is no file of learned numbers').waitFor();
    const from = `the bench of ${screen.name}`;
    await choose('learned.json', JSON.stringify({ ...bundle, numbers: [{ about: 'fault-rate', of: 'fuse-open', mean: 0.9, jobs: 20 }] }));
    await take.getByLabel('Your name for where it comes from').fill(from);
    await walk.noted(() => walk.press(take, 'Take it in'));
    const { numbers } = await walk.ask<LearnedView>('/api/learned');
    const fuse = numbers.find(({ id }) => id === 'fault-rate.tern-tn10.fuse-open')!;
    expect(fuse.mean).toBeGreaterThan(0.2);
    expect(fuse.jobs.some(({ text }) => text.includes(from))).toBe(true);
    await walk.expectAccessible();
  });

  it('had no error on the console', () => walk.end());
});
