import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { v7 } from 'uuid';
import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';
import { serveBrokenTern } from './broken-tern.ts';

/** The reference photo of the board of 70 × 55 mm, and where its corners lie in it, px (read off by eye). */
const PHOTO = readFileSync(join(import.meta.dirname, '../../models/tern-tn20/photos/board-front.jpg'));
const CORNERS = { 'lower left': '179, 1088', 'lower right': '1422, 1088', 'upper right': '1422, 111', 'upper left': '179, 111' };
const PX_PER_MM = 17.76;

async function addPhoto(server: ServerProcess): Promise<void> {
  const form = new FormData();
  form.append('photos', new Blob([PHOTO]), 'board.jpg');
  const sent = await fetch(`${server.url}/api/photos`, { method: 'POST', body: form });
  const { results } = (await sent.json()) as { results: { photo: { hash: string } }[] };
  const body = { item_id: 'tern', photo: results[0]!.photo.hash, side: 'board-front' };
  const event = { id: v7(), at: '2026-05-04T10:00:00Z', device: 'check', version: 1, kind: 'photo-taken', body };
  const headers = { 'content-type': 'application/json' };
  const { ok } = await fetch(`${server.url}/api/events`, { method: 'POST', headers, body: JSON.stringify({ events: [event] }) });
  if (!ok) throw new Error('the server did not take the photo');
}

let browser: Browser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each(SCREENS)('measuring on a photo on $name', (screen) => {
  const { home, remove } = temporaryHome();
  let server: ServerProcess;
  let walk: BenchWalk;
  const desk = () => walk.region('On the photo');

  beforeAll(async () => {
    server = await serveBrokenTern(home);
    await addPhoto(server);
    walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/bench/tern');
    await walk.region('Photos').getByRole('link', { name: 'Measure on a photo' }).click();
    await desk().getByText('Mark two places of the board at least', { exact: false }).waitFor();
  });
  afterAll(async () => {
    await walk.end();
    await server.stop();
    remove();
  });

  /** A tap at a place of the photo, px. */
  async function tap(x: number, y: number): Promise<void> {
    const picture = desk().getByRole('img', { name: /^The photo with/ });
    await picture.scrollIntoViewIfNeeded();
    const at = await picture.evaluate(
      (svg, [px, py]) => {
        const spot = new DOMPoint(px, py).matrixTransform((svg as SVGSVGElement).getScreenCTM()!);
        return [spot.x, spot.y] as const;
      },
      [x, y] as const,
    );
    await (screen.touch ? walk.page.touchscreen.tap(...at) : walk.page.mouse.click(...at));
  }

  it('lays it on the board by the corners, by keys, and says where a swapped pair goes wrong', async () => {
    const fold = await walk.unfold(desk(), 'Places on the photo');
    for (const [name, place] of Object.entries(CORNERS)) await fold.getByLabel(`Corner ${name}`).fill(place);
    await walk.press(fold, 'Take these places');
    await desk()
      .getByText(/^By 4 marks 17\.8 px are a millimetre, the lean of the camera counted in/)
      .waitFor();
    await fold.getByLabel('Corner lower left').fill(CORNERS['lower right']);
    await fold.getByLabel('Corner lower right').fill(CORNERS['lower left']);
    await walk.press(fold, 'Take these places');
    await desk()
      .getByText(/swapped/)
      .waitFor();
    await walk.expectAccessible();
    await fold.getByLabel('Corner lower left').fill(CORNERS['lower left']);
    await fold.getByLabel('Corner lower right').fill(CORNERS['lower right']);
    await walk.press(fold, 'Take these places');
    await desk()
      .getByText(/^By 4 marks/)
      .waitFor();
  });

  it('measures between two taps, with how sure it is, and notes it', async () => {
    await desk().getByRole('radio', { name: 'Measure', exact: true }).check();
    await tap(400, 600);
    await tap(400 + 20 * PX_PER_MM, 600);
    await desk()
      .getByText(/^(19\.[6-9]|20\.[0-4]) ± 0\.\d+ mm$/)
      .first()
      .waitFor();
    await walk.expectAccessible();
    await desk().getByLabel('What it is').fill('Row of pins');
    await walk.noted(() => walk.press(desk(), 'Note it in the log'));
    expect(JSON.stringify(await walk.ask('/api/items/tern'))).toMatch(
      /Row of pins, measured on a photo: (19\.[6-9]|20\.[0-4]) ± 0\.\d+ mm/,
    );
  });

  it('measures by one known distance where no corner is seen', async () => {
    await desk().getByRole('radio', { name: 'Mark known places' }).check();
    await desk().getByRole('radio', { name: 'By one known distance' }).check();
    await desk().getByLabel('Their distance, mm').fill('70');
    await tap(179, 1088);
    await desk().getByText('Mark two places of the board at least', { exact: false }).waitFor();
    await tap(1422, 1088);
    await desk()
      .getByText(/^By 2 marks 17\.[67] px|^By 2 marks 17\.8 px/)
      .waitFor();
    await walk.expectAccessible();
  });
});
