import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { startBoardServer, type BoardServer } from './board-server.ts';

let browser: Browser;
let server: BoardServer;
const { home, remove } = temporaryHome();

/** The netlist of the Tern TN-20 with the resistor at RST drawn as a thousand times what it is. */
const WRONG = readFileSync(join(import.meta.dirname, '../../models/tern-tn20/board.cir'), 'utf8').replace(
  'R12 v33 rst 10k',
  'R12 v33 rst 10meg',
);
const SEARCH_MS = 120_000;

beforeAll(async () => {
  browser = await openBrowser();
  server = await startBoardServer(home);
  const model_id = 'tern-traced';
  const part = { kind: 'resistor', value: '10k', package: '0603', side: 'front', x_mm: 20, y_mm: 20 };
  server.record([
    { kind: 'model-begun', body: { model_id, name: 'Traced Tern', currency: 'GBP', from: { copy_of: 'tern-tn20' } } },
    { kind: 'model-netlist-set', body: { model_id, text: WRONG, from: 'imported' } },
    {
      kind: 'model-parts-placed',
      body: {
        model_id,
        parts: [
          { ref: 'R12', ...part },
          { ref: 'R99', ...part, x_mm: 24 },
        ],
      },
    },
    { kind: 'model-net-named', body: { model_id, pin: 'R12.1', name: 'v33' } },
    { kind: 'model-net-named', body: { model_id, pin: 'R12.2', name: 'vbat' } },
    { kind: 'model-pins-joined', body: { model_id, pins: ['R12.1', 'R12.2'] } },
  ]);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

describe.each(SCREENS)('the check of a model on $name', (screen) => {
  it('says what a model of the folder can do, and that its netlist predicts its good boards', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/models/tern-tn20');
    await walk.page.getByRole('link', { name: 'What this model can and cannot do now' }).click();
    await walk.page.getByRole('heading', { name: 'What this model can do now', level: 1 }).waitFor({ timeout: SEARCH_MS });
    await walk.settled();
    expect(await walk.region('What it can and cannot do').innerText()).toMatch(
      /faults, in \d+ groups that some check tells from each other/,
    );
    expect(await walk.region('The netlist against good boards').innerText()).toContain('It predicts all 16 readings of good boards.');
    await walk.expectAccessible();
    await walk.end();
  });

  it('names the net at which a traced netlist is wrong, and what else does not go together', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    walk.page.setDefaultTimeout(SEARCH_MS);
    await walk.goto('/models/tern-traced/check');
    const netlist = walk.region('The netlist against good boards');
    expect(await netlist.innerText()).toContain('RST of the processor: good boards read 3.28');
    const likely = await netlist.getByRole('listitem').filter({ hasText: '%)' }).allInnerTexts();
    expect(likely.slice(0, 3).join(' ')).toContain('RST');
    expect(await netlist.innerText()).toMatch(/\d+ mistakes that may be were thought of/);
    const apart = await walk.region('What does not go together').innerText();
    expect(apart).toContain('V33 at R12.1 and VBAT at R12.2 are joined: two supplies on one net.');
    expect(apart).toContain('R99 is in the picture and not in the netlist.');
    expect(apart).toMatch(/\d+ parts are in the netlist and not in the picture/);
    await walk.expectAccessible();
    await walk.end();
  });

  it('takes a foreign table of places over, with the columns as the person corrects them', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    walk.page.setDefaultTimeout(SEARCH_MS);
    await walk.goto('/models/tern-traced/check');
    const files = walk.region('Netlist and placement');
    const ref = screen.touch ? 'C15' : 'C14';
    const table = `Designator;Across;Mid Y (mil);Layer;Footprint\n${ref};1000;500;top;C0603\n`;
    await files
      .getByLabel('Table of places (CSV) from any program')
      .setInputFiles({ name: 'places.csv', mimeType: 'text/csv', buffer: Buffer.from(table) });
    expect(await files.getByLabel('Reference').inputValue()).toBe('0');
    await files.getByLabel('Place across').selectOption({ label: 'Across: 1000' });
    await files.getByLabel('Lengths are in').selectOption('mil');
    await walk.expectAccessible();
    await walk.press(files, 'Take 1 part over');
    const placed = async () => {
      const { parts } = await walk.ask<{ parts: { ref: string; x_mm: number; y_mm: number; side: string }[] }>('/api/models/tern-traced');
      return parts.find((part) => part.ref === ref);
    };
    await expect.poll(placed, { timeout: SEARCH_MS }).toMatchObject({ x_mm: 25.4, y_mm: 12.7, side: 'front' });
    expect(await files.getByRole('link', { name: 'Write the netlist out as SPICE text' }).getAttribute('href')).toBe(
      '/api/models/tern-traced/netlist',
    );
    await walk.end();
  });
});
