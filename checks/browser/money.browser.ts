import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { AskingView, BenchView, ItemRow, LearnedView, MarketView, TaxView } from '../../src/bench/views/index.ts';
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

/** The year of the demo. */
const YEAR = 'from=2026-01-01&to=2026-12-31';

describe.each(SCREENS)('money on $name', (screen) => {
  let walk: BenchWalk;
  beforeAll(async () => {
    walk = await BenchWalk.begin(browser, server, screen);
  });

  it('learns prices from a sale and from a table, and refuses a table with a wrong line whole', async () => {
    await walk.goto('/models/tern-tn10');
    const before = await walk.ask<MarketView>('/api/models/tern-tn10/market');
    const market = walk.region('Market');
    await walk.noted(async () => {
      const fold = await walk.unfold(market, 'Add a sale that you saw');
      await fold.getByLabel(/^Sold for/).fill('61.00');
      await walk.press(fold, 'Add the sale');
    });
    const table = await walk.unfold(market, 'Add a table of sales');
    await table.getByLabel('A table of sales').fill('day,price,condition\n2026-10-01,55,B\n2026-10-02,58,mint');
    await walk.press(table, 'Add the table');
    await table.getByText('Line 3, condition: "mint" is not one of').waitFor();
    await table.getByLabel('A table of sales').fill('day,price,condition\n2026-10-01,55,B\n2026-10-02,58,A');
    await walk.noted(() => walk.press(table, 'Add the table'));
    const after = await walk.ask<MarketView>('/api/models/tern-tn10/market');
    expect(after.sales).toHaveLength(before.sales.length + 3);
    await walk.expectAccessible();
  });

  it('takes a sale out again', async () => {
    await walk.goto('/models/tern-tn10');
    const before = await walk.ask<MarketView>('/api/models/tern-tn10/market');
    await walk.noted(async () => {
      const fold = await walk.unfold(walk.region('Market'), /known sale/);
      await fold
        .getByRole('button', { name: /^Take out/ })
        .first()
        .click();
    });
    expect((await walk.ask<MarketView>('/api/models/tern-tn10/market')).sales).toHaveLength(before.sales.length - 1);
  });

  it('counts the fees of a place in what to ask there', async () => {
    const place = `the stall of ${screen.name}`;
    await walk.goto('/settings');
    await walk.noted(async () => {
      const fees = walk.region('Fees of each place');
      await fees.getByLabel(/^Place/).fill(place);
      await fees.getByLabel('From the day').fill('2020-01-01');
      await fees.getByLabel('Share of the price, per cent').fill('25');
      await walk.press(fees, 'Keep this table');
    });
    expect((await walk.ask<BenchView>('/api/bench')).fees.map((table) => table.place)).toContain(place);
    await walk.expectAccessible();
  });

  it('advises an ask and answers a bid where a unit can be listed', async () => {
    const { rows } = await walk.ask<{ rows: ItemRow[] }>('/api/items?limit=200');
    const unit = rows.find(({ status, kind }) => kind === 'unit' && (status === 'proved' || status === 'on-the-bench'))!;
    await walk.goto(`/bench/${unit.id}`);
    const list = await walk.unfold(walk.region('Grade and let go'), 'List it for sale');
    const asking = await walk.ask<AskingView>(`/api/items/${unit.id}/asking`);
    await walk.press(list, 'Use this price');
    expect(await list.getByLabel('Asking price').inputValue()).toBe((asking.ask_minor / 100).toFixed(2));
    const bid = await walk.unfold(list, 'Somebody bids');
    await bid.getByLabel('The bid').fill('0.50');
    await bid.getByText(/^Ask for .* instead/).waitFor();
    await walk.expectAccessible();
  });

  it('counts postage by the weight of the parcel where the person has a table of it', async () => {
    await walk.goto('/settings');
    const section = walk.region('Postage by weight');
    await section.getByLabel('From the day').fill('2020-01-01');
    await section.getByLabel('Parcel 1: up to so many grams').fill('500');
    await section.getByLabel('Parcel 1: costs').fill('3.20');
    await walk.press(section, 'One more weight');
    await section.getByLabel('Parcel 2: costs').fill('4.60');
    await walk.noted(() => walk.press(section, 'Keep this table of postage'));
    const { postage } = await walk.ask<BenchView>('/api/bench');
    expect(postage.at(-1)!.bands).toEqual([
      { up_to_g: 500, price_minor: 320 },
      { up_to_g: 1000, price_minor: 460 },
    ]);
    await walk.expectAccessible();
  });

  it('leads from selling a unit to its line in the stock book', async () => {
    const { rows } = await walk.ask<{ rows: ItemRow[] }>('/api/items?limit=200');
    const unit = rows.find(({ status, kind }) => kind === 'unit' && status === 'on-the-bench')!;
    await walk.goto(`/bench/${unit.id}`);
    await walk.noted(async () => {
      const sale = await walk.unfold(walk.region('Grade and let go'), /^Sell$/);
      await sale.getByLabel(/^Price/).fill('13.37');
      await walk.press(sale, 'It is sold');
    });
    const sold = await walk.ask<TaxView>('/api/books/tax?from=2020-01-01&to=2099-12-31');
    const line = sold.stock_book.find(({ description }) => description.startsWith(`#${unit.number} `))!;
    expect(line.sale_minor).toBe(1337);
    await walk.goto('/books');
    const period = walk.region('A period, for the tax office');
    await period.getByLabel('From', { exact: true }).fill('2026-01-01');
    await period.getByLabel('To', { exact: true }).fill('2099-12-31');
    await walk.unfold(period, /^Stock book/);
    const row = period.getByRole('row', { name: new RegExp(line.description) });
    await row.getByText('13.37').first().waitFor();
    await walk.expectAccessible();
  });

  it('leads from a sale to the stock book, with the tax of the rule that the person chose', async () => {
    await walk.goto('/books');
    const period = walk.region('A period, for the tax office');
    await period.getByLabel('From', { exact: true }).fill('2026-01-01');
    await period.getByLabel('To', { exact: true }).fill('2026-12-31');
    await walk.noted(async () => {
      const rules = await walk.unfold(period, 'Rules in use');
      await rules.getByLabel('From the day').fill('2026-01-01');
      await rules.getByLabel('Rate in per cent').fill('20');
      await walk.press(rules, 'Use this rule');
    });
    await period.getByText(/^Margin scheme, thing by thing: tax of/).waitFor();
    const tax = await walk.ask<TaxView>(`/api/books/tax?${YEAR}`);
    const sold = tax.stock_book.filter(({ sale_minor }) => sale_minor !== null);
    expect(sold.length).toBeGreaterThan(2);
    for (const line of sold) expect(line.tax_minor).toBe(Math.max(0, Math.round((line.sale_minor! - line.purchase_minor) / 6)));
    await walk.unfold(period, /^Stock book/);
    await period.getByRole('cell', { name: sold[0]!.description }).waitFor();
    const download = walk.page.waitForEvent('download');
    await period.getByRole('link', { name: 'Save the books of this period' }).click();
    expect((await download).suggestedFilename()).toBe('books-2026-01-01-to-2026-12-31.zip');
    await walk.expectAccessible();
  });

  it('shows what was learned with the jobs behind it, and begins a number anew', async () => {
    await walk.goto('/books');
    const { numbers } = await walk.ask<LearnedView>('/api/learned');
    const number = numbers.find(({ about }) => about === 'remedy-time')!;
    const group = await walk.unfold(walk.region('What was learned'), 'How long a remedy takes');
    const one = await walk.unfold(group, number.name);
    await one.getByText(number.jobs[0]!.text).first().waitFor();
    await walk.noted(() => one.getByRole('button', { name: /^Begin anew/ }).click());
    expect((await walk.ask<LearnedView>('/api/learned')).numbers.map(({ id }) => id)).not.toContain(number.id);
    await walk.expectAccessible();
  });

  it('had no error on the console', () => walk.end());
});
