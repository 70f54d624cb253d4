import type { Browser, Locator } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { ComparisonView, ItemFile, ReferencesView } from '../../src/bench/views/index.ts';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { serveBrokenTern } from './broken-tern.ts';
import { photoWithout, type Gone } from './photo-pair.ts';

/** The fuse as it lies on the photo of the model, and a place without any part. */
const FUSE: Gone = { x: 10, y: 17.9, w: 4.4, h: 2.6 };
/** A comparison on a busy machine. */
const COMPARED_MS = 120_000;

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function post<T>(server: ServerProcess, path: string, body: object): Promise<T> {
  const headers = { 'content-type': 'application/json' };
  const answer = await fetch(server.url + path, { method: 'POST', headers, body: JSON.stringify(body) });
  expect(answer.status, await answer.clone().text()).toBe(200);
  return (await answer.json()) as T;
}

async function sendPhoto(server: ServerProcess, bytes: Buffer): Promise<string> {
  const form = new FormData();
  form.append('photos', new Blob([new Uint8Array(bytes)], { type: 'image/jpeg' }), 'board.jpg');
  const answer = await fetch(`${server.url}/api/photos`, { method: 'POST', body: form });
  const { results } = (await answer.json()) as { results: { photo: { hash: string } }[] };
  return results[0]!.photo.hash;
}

describe.each(SCREENS)('a photo of a board without its fuse, on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  let photo: string;

  beforeAll(async () => {
    server = await serveBrokenTern(home);
    photo = await sendPhoto(server, await photoWithout([FUSE]));
    await post(server, '/api/events', { events: [{ kind: 'photo-taken', body: { item_id: 'tern', photo, side: 'board-front' } }] });
    walk = await BenchWalk.begin(browser, server, screen);
  });
  afterAll(async () => {
    await server.stop();
    remove();
  });

  const file = (): Promise<ItemFile> => walk.ask<ItemFile>('/api/items/tern');
  const differences = (): Locator => walk.region('What differs');
  const card = (): Locator => walk.page.getByRole('region', { name: 'Difference 1', exact: true });
  const compared = (): Promise<void> => differences().waitFor({ timeout: COMPARED_MS });

  it('is compared in the background with the photo of the model, and the fuse is named first', async () => {
    await walk.goto('/bench/tern');
    await walk.page.getByRole('link', { name: 'Compare with a good board' }).click();
    await walk.page.getByRole('progressbar', { name: 'How far the comparison is' }).or(differences()).first().waitFor();
    await compared();
    await card().getByText('F1: something').waitFor();
    expect(await differences().locator('.eyes-list li').first().innerText()).toContain('F1');
    await walk.region('Look here yourself').getByText('All of the board was compared.').waitFor();
    await walk.expectAccessible();
  });

  it('is looked at side by side with one view for both, one over the other, and in turn', async () => {
    const pictures = walk.region('Both boards');
    const boxes = (): Promise<(string | null)[]> =>
      pictures.getByRole('img').evaluateAll((all) => all.map((each) => each.getAttribute('viewBox')));
    const whole = await boxes();
    await walk.press(differences().locator('.eyes-list'), /F1/);
    const near = await boxes();
    expect(near[0]).not.toBe(whole[0]);
    expect(near[0]).toBe(near[1]);
    await pictures.getByRole('group', { name: /^Good board: arrow keys/ }).press('ArrowRight');
    const moved = await boxes();
    expect(moved[0]).not.toBe(near[0]);
    expect(moved[0]).toBe(moved[1]);
    await pictures.getByRole('radio', { name: 'Swipe' }).check();
    await pictures.getByLabel('How far the good board reaches').fill('0.25');
    expect(await pictures.locator('clipPath rect').last().getAttribute('width')).toBe('400');
    await pictures.getByRole('radio', { name: 'Blink' }).check();
    await walk.press(pictures, 'Show the other');
    await pictures
      .getByRole('group', { name: /^Good board/ })
      .first()
      .waitFor();
    await walk.expectAccessible();
    await pictures.getByRole('radio', { name: 'Side by side' }).check();
  });

  it('gives a finding at the fuse that moves the belief, by one key', async () => {
    const before = await file();
    await card().getByLabel('What it is').selectOption('missing');
    await walk.noted(() =>
      card()
        .getByRole('button', { name: /^Really there/ })
        .press('r'),
    );
    const after = await file();
    expect(after.findings).toMatchObject([{ place: 'F1', sees: 'missing' }]);
    const chanceAt = ({ belief }: ItemFile): number =>
      belief.hypotheses
        .filter(({ faults }) => faults.some(({ name }) => /fuse|F1/i.test(name)))
        .reduce((sum, { chance }) => sum + chance, 0);
    expect(chanceAt(after)).toBeGreaterThan(chanceAt(before) + 0.3);
    await differences().getByText('really there', { exact: true }).waitFor();
  });

  it('takes what is seen by hand along pins, and over an area of the picture', async () => {
    const pictures = walk.region('Both boards');
    await walk.press(pictures, 'Along pins');
    const pins = walk.page.getByRole('region', { name: 'Some pins of a part' });
    await pins.getByLabel('Part').selectOption('U2');
    await pins.getByLabel('From', { exact: true }).selectOption('3');
    await pins.getByLabel('To', { exact: true }).selectOption('7');
    await walk.expectAccessible();
    await walk.noted(() => walk.press(pins, 'Bridged'));
    expect((await file()).findings.at(-1)).toMatchObject({ place: 'U2', sees: 'bridged', region: { side: 'front' } });
    await walk.press(pictures, 'Over an area');
    const map = pictures.getByRole('img').first();
    await map.scrollIntoViewIfNeeded();
    const box = (await map.boundingBox())!;
    for (const share of [0.4, 0.6]) {
      const at = { x: box.x + share * box.width, y: box.y + share * box.height };
      await (screen.touch ? walk.page.touchscreen.tap(at.x, at.y) : walk.page.mouse.click(at.x, at.y));
    }
    await walk.noted(() => walk.press(walk.page.getByRole('region', { name: 'An area of the board' }), 'Residue'));
    const { findings } = await file();
    expect(findings.at(-1)).toMatchObject({ sees: 'residue', region: { side: 'front' } });
    expect(findings.at(-1)!.region!.polygon).toHaveLength(4);
  });

  it('is a difference no more where it is called normal for the model', async () => {
    await walk.goto('/bench/tern/compare');
    await compared();
    await walk.press(differences().locator('.eyes-list'), /F1/);
    await walk.noted(() => walk.press(card(), /^Normal for this model/));
    await walk.press(differences(), 'Compare again with what is normal');
    await walk.page.getByText('1 known variation').waitFor({ timeout: COMPARED_MS });
    const question = { item_id: 'tern', photo, side: 'board-front' };
    const { result } = await post<ComparisonView>(server, '/api/comparisons', question);
    expect(result!.differences.filter(({ part, chance }) => part === 'F1' && chance > 0.3)).toEqual([]);
  });

  it('becomes a reference itself, whose corners are marked', async () => {
    const references = walk.region('Photos of good boards');
    await walk.noted(() => walk.press(references, /^This board is good/));
    await references.getByText('Chosen here').waitFor();
    await references.getByRole('button', { name: 'Mark its corners', exact: true }).click();
    const map = references.getByRole('img', { name: /corners marked/ });
    await map.scrollIntoViewIfNeeded();
    for (const [x, y] of [
      [0.15, 0.85],
      [0.85, 0.85],
      [0.85, 0.15],
      [0.15, 0.15],
    ] as const) {
      const box = (await map.boundingBox())!;
      const at = { x: box.x + x * box.width, y: box.y + y * box.height };
      await (screen.touch ? walk.page.touchscreen.tap(at.x, at.y) : walk.page.mouse.click(at.x, at.y));
    }
    await walk.expectAccessible();
    await walk.noted(() => walk.press(references, 'Keep the corners'));
    const { sides } = await walk.ask<ReferencesView>('/api/models/tern-tn20/references');
    const own = sides[0]!.references.find((each) => each.photo === photo)!;
    expect(own.corners!.map(([x]) => Math.round(10 * x) / 10)).toEqual([0.2, 0.9, 0.9, 0.2].map((x) => expect.closeTo(x, 0)));
    await walk.end();
  });
});
