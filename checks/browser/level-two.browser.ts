import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ItemFile, PointView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { startBoardServer, type BoardServer } from './board-server.ts';
import { brokenTern } from './broken-tern.ts';

/** Size of the board of a Tern TN-20, mm, and the room that its picture has around it. */
const BOARD = { w: 70, h: 55, margin: 1.5 };

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('a board of which the circuit is known, on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: BoardServer;
  let walk: BenchWalk;

  beforeAll(async () => {
    server = await startBoardServer(home);
    server.record(brokenTern());
    await file();
    walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/bench/tern');
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  const file = async (): Promise<ItemFile> => (await (await fetch(`${server.url}/api/items/tern`)).json()) as ItemFile;
  const board = (): Locator => walk.region('Board');
  const map = (): Locator => board().getByRole('img');

  /** Where a place of the front is on the screen, while the whole board is seen. */
  async function onScreen(x: number, y: number): Promise<{ x: number; y: number }> {
    await map().scrollIntoViewIfNeeded();
    const box = (await map().boundingBox())!;
    const scale = Math.min(box.width / (BOARD.w + 2 * BOARD.margin), box.height / (BOARD.h + 2 * BOARD.margin));
    return { x: box.x + box.width / 2 + (x - BOARD.w / 2) * scale, y: box.y + box.height / 2 + (BOARD.h / 2 - y) * scale };
  }

  async function pointAt(x: number, y: number): Promise<void> {
    const at = await onScreen(x, y);
    await (screen.touch ? walk.page.touchscreen.tap(at.x, at.y) : walk.page.mouse.click(at.x, at.y));
  }

  it('says where the leads go, how it is fed, what a good one shows and what each range leads to', async () => {
    const { advice } = await file();
    const { probe, outcomes, reference } = advice.check!;
    const card = walk.next();
    const [pad] = probe!.red!.pads;
    for (const words of [probe!.red!.name, pad!.ref, probe!.power.name, reference!]) await card.getByText(words).first().waitFor();
    const likely = outcomes.filter(({ range, chance }) => range !== null && chance > 0.05);
    expect(await card.locator('.outcomes li').count()).toBeGreaterThanOrEqual(likely.length);
    expect(likely.length).toBeGreaterThan(1);
    await map().locator('.lead-red').waitFor();
    await board().getByText(`Rings mark where the leads go: red ${pad!.ref}`).waitFor();
    await walk.expectAccessible();
  });

  it('marks the leads of the measurement that is chosen instead', async () => {
    const { advice } = await file();
    const other = advice.other_checks.find(({ probe }) => probe?.red && probe.red.net !== advice.check!.probe!.red!.net)!;
    const folded = await walk.unfold(walk.next(), /^Do something else/);
    await walk.press(folded, new RegExp(`^${other.name}`));
    await board().getByText(`Rings mark where the leads go: red ${other.probe!.red!.pads[0]!.ref}`).waitFor();
    await walk.press(walk.page.getByRole('region', { name: /^Your choice/ }), 'Back to the advice');
    await board().getByText(`Rings mark where the leads go: red ${advice.check!.probe!.red!.pads[0]!.ref}`).waitFor();
  });

  it('names groups of faults that nothing tells apart, with the remedy that serves all', async () => {
    const belief = walk.region('What may be wrong');
    const alike = belief.locator('details.alike').first();
    await alike.locator('summary').click();
    await alike.getByText('No check tells these apart').waitFor();
    expect(await alike.locator('li').count()).toBeGreaterThan(0);
    await walk.expectAccessible();
  });

  it('takes a finding at a part that is chosen from the list by keys', async () => {
    await board().getByLabel('Part', { exact: true }).selectOption('U6');
    const chosen = walk.page.getByRole('region', { name: /^Chosen: U6/ });
    await walk.noted(() => walk.press(chosen, 'Nothing wrong'));
    expect((await file()).findings).toMatchObject([{ place: 'U6', sees: 'nothing-wrong', region: null }]);
    await walk.press(board(), 'Let go');
    await walk.press(board(), 'All of it');
  });

  it('comes closer by buttons and keys, and turns over', async () => {
    const seen = (): Promise<string | null> => map().getAttribute('viewBox');
    const whole = await seen();
    await walk.press(board(), 'Closer');
    const near = await seen();
    expect(near).not.toBe(whole);
    await board()
      .getByRole('group', { name: /^Board: arrow keys/ })
      .press('ArrowRight');
    expect(await seen()).not.toBe(near);
    await board()
      .getByRole('group', { name: /^Board: arrow keys/ })
      .press('0');
    expect(await seen()).toBe(whole);
    await walk.press(board(), 'Show the back');
    await board()
      .getByRole('img', { name: /^The back/ })
      .waitFor();
    await walk.press(board(), 'Show the front');
  });

  it('opens the form for a reading at the pad that is pointed at, and asks when the mode is another', async () => {
    // The test point TP7 of the 3.3 V rail, by the placement of the model.
    const { parts } = await walk.ask<{ parts: { ref: string; x_mm: number; y_mm: number }[] }>('/api/models/tern-tn20');
    const tp = parts.find(({ ref }) => ref === 'TP7')!;
    await pointAt(tp.x_mm, tp.y_mm);
    const chosen = walk.page.getByRole('region', { name: /^Chosen: TP7/ });
    const { points } = await walk.ask<{ points: PointView[] }>('/api/models/tern-tn20/points');
    const [ohms, volts] = (['ohms', 'volts'] as const).map((mode) => points.find((each) => each.red === 'v33' && each.mode === mode)!);
    await chosen.getByLabel('What to measure').selectOption(ohms!.id);
    await chosen.getByRole('textbox').first().fill('3,29 V');
    const asked = chosen.getByRole('group', { name: 'What did the meter show?' });
    await asked.getByRole('button', { name: 'Measure in ohms' }).waitFor();
    await walk.expectAccessible();
    await walk.noted(() => walk.press(asked, new RegExp(`^Note it as ${volts!.name}`)));
    const { readings, belief } = await file();
    expect(readings).toMatchObject([{ point: volts!.id, mode: 'volts', value: 3.29 }]);
    expect(belief.moved!.text).toContain('3.29 V');
  });

  it('shows what the reading moved, and the reading against a good board; it is undone there', async () => {
    const { belief, readings } = await file();
    await walk.region('What may be wrong').getByText(belief.moved!.text).waitFor();
    const row = walk.region('Readings').getByRole('row').filter({ hasText: '3.29 V' });
    await row.getByText(readings[0]!.reference ?? readings[0]!.expected!).waitFor();
    await row.getByText(/^as good/).waitFor();
    await walk.noted(() => walk.press(row, /^Undo: /));
    expect((await file()).readings).toEqual([]);
  });

  it('takes an area by numbers and by hand, shows it, and gives it up when it is undone', async () => {
    await walk.press(board(), 'Mark an area');
    const area = walk.page.getByRole('region', { name: 'An area of the board' });
    for (const [label, mm] of [
      ['From the left', 24],
      ['From below', 5],
      ['Wide', 14],
      ['High', 9],
    ] as const)
      await area.getByLabel(`${label}, mm`).fill(String(mm));
    await walk.expectAccessible();
    await walk.noted(() => walk.press(area, 'Residue'));
    const typed = (await file()).findings.at(-1)!;
    expect(typed).toMatchObject({ place: 'converter', sees: 'residue', region: { side: 'front' } });
    expect(typed.region!.polygon).toEqual([
      [24, 5],
      [38, 5],
      [38, 14],
      [24, 14],
    ]);
    await map().locator('.board-region').waitFor();

    await walk.press(board(), 'Mark an area');
    if (screen.touch) {
      await pointAt(40, 10);
      await pointAt(50, 20);
    } else {
      const [from, to] = [await onScreen(40, 10), await onScreen(50, 20)];
      await walk.page.mouse.move(from.x, from.y);
      await walk.page.mouse.down();
      await walk.page.mouse.move(to.x - 5, to.y + 5);
      await walk.page.mouse.move(to.x, to.y);
      await walk.page.mouse.up();
    }
    await walk.noted(() => walk.press(area, 'Corrosion'));
    const drawn = (await file()).findings.at(-1)!.region!.polygon;
    for (const [i, [x, y]] of (
      [
        [40, 10],
        [50, 10],
        [50, 20],
        [40, 20],
      ] as const
    ).entries())
      expect(Math.hypot(drawn[i]![0] - x, drawn[i]![1] - y), `corner ${i + 1} is at ${drawn[i]!.join(', ')}`).toBeLessThan(0.6);
    expect(await map().locator('.board-region').count()).toBe(2);
    await walk.noted(() => walk.press(walk.region('Log'), /^Undo: Looked at/));
    expect(await map().locator('.board-region').count()).toBe(1);
  });

  it('is shown on the page of its model, part by part', async () => {
    await walk.goto('/models/tern-tn20');
    await board().getByLabel('Part', { exact: true }).selectOption('C5');
    await board()
      .getByText(/Pin 1: VSYS/)
      .waitFor();
    await walk.expectAccessible();
    await walk.end();
  });
});

it('says how far the circuit is computed, and advises meanwhile', async () => {
  const { home, remove } = temporaryHome();
  const server = await startBoardServer(home, 30);
  server.record(brokenTern());
  const { belief } = (await (await fetch(`${server.url}/api/items/tern`)).json()) as ItemFile;
  const walk = await BenchWalk.begin(browser, server, SCREENS[1]!);
  await walk.goto('/bench/tern');
  const progress = walk.page.getByRole('progressbar', { name: `30 of ${belief.knowledge!.rows} faults` });
  expect(await progress.getAttribute('value')).toBe('30');
  await walk.next().locator('.headline').waitFor();
  await walk.expectAccessible();
  await walk.end();
  await server.stop();
  remove();
});
