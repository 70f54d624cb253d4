import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import sharp from 'sharp';
import type { BooksView, ItemFile, ItemRow } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('the whole path on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  let first: ItemRow;
  let second: ItemRow;

  beforeAll(async () => {
    server = await startServer(home, ['--empty']);
    walk = await BenchWalk.begin(browser, server, screen);
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  const file = (row: ItemRow): Promise<ItemFile> => walk.ask<ItemFile>(`/api/items/${row.id}`);
  const other = () => walk.region('Note something you did');

  it('weighs a listing and buys the lot', async () => {
    await walk.goto('/scout');
    const { page } = walk;
    await page.getByLabel('Title', { exact: true }).fill('Two pocket players, one will not start');
    await page.getByLabel('Model', { exact: true }).selectOption('tern-tn20');
    await page.getByLabel('How many').fill('2');
    await page.getByLabel('Seller', { exact: true }).fill('Larkhill clearances');
    await page.getByLabel(/^Price asked/).fill('24.00');
    await page.getByLabel(/^Postage \(/).fill('4.50');
    await page.getByRole('group', { name: 'Starts', exact: true }).getByRole('radio', { name: 'Fails' }).check();
    await walk.region('Then').waitFor();
    await walk.settled();
    await walk.expectAccessible();
    const buy = await walk.unfold(walk.region('Then'), 'I bought it');
    await walk.noted(() => walk.press(buy, 'It is bought'));
    await page.waitForURL(/\/pile/);
    const rows = (await walk.ask<{ rows: ItemRow[] }>('/api/items?limit=10')).rows.sort((a, b) => a.number - b.number);
    expect(rows.map(({ model_id, status }) => [model_id, status])).toEqual(Array.from({ length: 2 }, () => ['tern-tn20', 'bought']));
    expect(rows.reduce((sum, row) => sum + row.cost_minor, 0)).toBe(2850);
    [first, second] = rows as [ItemRow, ItemRow];
    await walk.settled();
    await walk.expectAccessible();
  });

  it('receives a unit from its card', async () => {
    await walk.goto(`/bench/${first.id}`);
    await walk.page.getByLabel(/^How it looks/).fill('Scratched window, battery door present');
    await walk.noted(() => walk.press(walk.next(), 'It is here'));
    expect((await file(first)).row.status).toBe('on-the-bench');
  });

  it('adds what the seller says and what a trial shows, and the advice follows', async () => {
    const before = await file(first);
    const says = await walk.unfold(other(), 'The seller says more');
    await walk.noted(() => walk.press(says, 'Fails'));
    const tried = await walk.unfold(other(), 'Tried a function');
    await tried.getByLabel('Function').selectOption('starts');
    await walk.noted(() => walk.press(tried, 'Fails'));
    const after = await file(first);
    expect(after.belief.blocks).not.toEqual(before.belief.blocks);
    expect(after.advice.why.length).toBeGreaterThan(0);
    await walk.region('What may be wrong').waitFor();
    await walk.expectAccessible();
  });

  it('takes photos, several at once, and shows one large', async () => {
    const picture = (hue: string) =>
      sharp({ create: { width: 900, height: 700, channels: 3, background: hue } })
        .jpeg()
        .toBuffer();
    const photos = walk.region('Photos');
    await photos.getByLabel('What they show').selectOption('board-front');
    const files = [
      { name: 'one.jpg', mimeType: 'image/jpeg', buffer: await picture('#2a6') },
      { name: 'two.jpg', mimeType: 'image/jpeg', buffer: await picture('#26a') },
    ];
    await walk.noted(() => photos.locator('input[type=file]').first().setInputFiles(files));
    expect((await file(first)).photos).toHaveLength(2);
    await photos
      .getByRole('button', { name: /look closely/ })
      .first()
      .click();
    const large = walk.page.getByRole('dialog', { name: /^Photo:/ });
    await large.locator('canvas').first().waitFor();
    await walk.press(large, 'Closer');
    await walk.press(large, 'Close');
    await large.waitFor({ state: 'hidden' });
    const refused = { name: 'letter.jpg', mimeType: 'image/jpeg', buffer: Buffer.from('this is a letter') };
    await photos.locator('input[type=file]').first().setInputFiles([refused]);
    await walk.page
      .getByText(/letter\.jpg/)
      .first()
      .waitFor();
    expect((await file(first)).photos).toHaveLength(2);
  });

  it('takes a reading in the words of the meter, and it stands beside the reference', async () => {
    const measured = await walk.unfold(other(), 'Measured a point');
    const point = (await walk.ask<{ file: { points: { id: string; mode: string }[] } }>('/api/models/tern-tn20')).file.points.find(
      ({ mode }) => mode === 'volts',
    )!;
    await measured.getByRole('combobox', { name: 'Point' }).selectOption(point.id);
    const belief = (await file(first)).belief;
    await measured.getByRole('textbox').first().fill('0.02');
    await walk.noted(() => walk.press(measured, /Note|Record/));
    const after = await file(first);
    expect(after.readings.at(-1)).toMatchObject({ point: point.id, value: 0.02 });
    expect(after.readings.at(-1)!.reference).not.toBeNull();
    expect(after.belief.hypotheses).not.toEqual(belief.hypotheses);
    await walk.region('Readings').waitFor();
  });

  it('disagrees with an advice, and it does not come back', async () => {
    const { advice } = await file(first);
    await walk.next().getByText(advice.headline).first().waitFor();
    const disagree = await walk.unfold(walk.next(), /I disagree/);
    await disagree.getByRole('textbox').first().fill('the lead is away');
    await walk.noted(() => walk.press(disagree, /^I disagree/));
    const after = await file(first);
    expect(after.advice.id).not.toBe(advice.id);
    expect(after.advice.declined.map(({ id }) => id)).toContain(advice.id);
  });

  it('undoes the last thing, and the log keeps both', async () => {
    const { log } = await file(first);
    await walk.noted(() => walk.press(walk.region('Log'), /^Undo: /));
    const after = await file(first);
    expect(after.log.filter(({ corrected }) => corrected)).toHaveLength(log.filter(({ corrected }) => corrected).length + 1);
    expect(after.log.length).toBeGreaterThanOrEqual(log.length);
  });

  it('does some work on the unit with its minutes', async () => {
    const work = await walk.unfold(other(), 'Did some work');
    await work.getByRole('radio', { name: 'Not mended' }).check();
    await walk.noted(() => walk.press(work, 'Done'));
    const after = await file(first);
    expect(after.money.minutes).toBeGreaterThan(0);
  });

  it('moves the board of the other unit into this one, and its cost with it', async () => {
    await walk.goto(`/bench/${second.id}`);
    await walk.noted(async () => {
      const slot = await walk.unfold(walk.region('What it holds'), /Board TN-20/);
      await walk.press(slot, 'Out to the drawer');
    });
    await walk.goto(`/bench/${first.id}`);
    await walk.noted(async () => {
      const slot = await walk.unfold(walk.region('What it holds'), /Board TN-20/);
      await walk.press(slot, 'Out to the drawer');
    });
    await walk.settled();
    await walk.noted(async () => {
      const slot = await walk.unfold(walk.region('What it holds'), /Board TN-20/);
      await slot.getByRole('radio', { name: new RegExp(`of #${second.number}`) }).check();
      await walk.press(slot, 'It is in');
    });
    const [one, two] = [await file(first), await file(second)];
    const holds = one.slots.find(({ name }) => name === 'Board TN-20')!;
    expect(holds.holds).toBe('another');
    const board = await walk.ask<ItemFile>(`/api/items/${holds.item_id}`);
    expect(board.row.name).toContain(`#${second.number}`);
    const drawer = await walk.ask<{ assemblies: { row: ItemRow }[] }>('/api/drawer');
    const loose = drawer.assemblies.reduce((sum, { row }) => sum + row.cost_minor, 0);
    expect(one.money.cost_minor + two.money.cost_minor + loose).toBe(2850);
    await walk.goto('/drawer');
    await walk.expectAccessible();
  });

  it('proves the unit, step by step, and may not skip one without a reason', async () => {
    await walk.goto(`/bench/${first.id}`);
    const { proof } = await file(first);
    for (const step of proof.steps.slice(0, -1)) {
      const fold = await walk.unfold(walk.region('Proof'), step.name);
      await walk.noted(() => walk.press(fold, 'Pass'));
    }
    const last = await walk.unfold(walk.region('Proof'), proof.steps.at(-1)!.name);
    expect(await last.getByRole('button', { name: /^Sign off/ }).isDisabled()).toBe(true);
    await last.getByLabel('Reason').fill('the door is a replacement and holds');
    await walk.noted(() => walk.press(last, /^Sign off/));
    expect((await file(first)).proof.ready).toBe(true);
  });

  it('grades, lists and sells it', async () => {
    const leaving = walk.region('Grade and let go');
    await walk.noted(async () => walk.press(await walk.unfold(leaving, 'Grade'), /^Grade B/));
    expect((await file(first)).row.status).toBe('proved');
    await walk.noted(async () => {
      const list = await walk.unfold(leaving, 'List it for sale');
      await list.getByLabel('Asking price').fill('65.00');
      await list.getByLabel('Where it is for sale').fill('the stall by the harbour');
      await walk.press(list, 'It is listed');
    });
    await walk.expectAccessible();
    await walk.noted(async () => {
      const sell = await walk.unfold(leaving, 'Sell');
      await sell.getByLabel(/^Price/).fill('62.00');
      await sell.getByLabel('Fees').fill('7.44');
      await sell.getByLabel('Postage paid').fill('3.90');
      await walk.press(sell, 'It is sold');
    });
    expect((await file(first)).row.status).toBe('sold');
  });

  it('closes the books to the penny', async () => {
    await walk.goto('/books');
    const books = await walk.ask<BooksView>('/api/books');
    const sold = books.units.find(({ row }) => row.id === first.id)!;
    expect(sold.income_minor).toBe(6200 - 744 - 390);
    expect(sold.profit_minor).toBe(sold.income_minor - sold.cost_minor);
    expect(books.balanced).toBe(true);
    expect(books.cash_minor).toBe(-2850 + 6200 - 744 - 390);
    await walk.page.getByText(second.name).first().waitFor();
    await walk.expectAccessible();
  });

  it('had no error on the console, and every place is sound', async () => {
    for (const path of ['/pile', '/models', '/models/tern-tn20', '/settings', `/bench/${second.id}`]) {
      await walk.goto(path);
      await walk.expectAccessible();
    }
    await walk.end();
  });
});
