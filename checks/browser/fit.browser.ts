import type { Browser } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { openBrowser } from '../figures/browser.ts';
import { startServer, temporaryHome, type ServerProcess } from '../figures/server-process.ts';
import { BenchWalk, SCREENS } from './bench-walk.ts';

const socket = (name: string, pitch: number) => ({
  name: `${name}.kicad_mod`,
  mimeType: 'text/plain',
  buffer: Buffer.from(
    `(footprint "${name}" ${[0, 1, 2].map((i) => `(pad "${i + 1}" smd rect (at ${i * pitch} 0) (size 0.5 1.2) (layers "F.Cu"))`).join(' ')})`,
  ),
});

let browser: Browser;
let server: ServerProcess;
const { home, remove } = temporaryHome();

beforeAll(async () => {
  browser = await openBrowser();
  server = await startServer(home, ['--empty']);
});
afterAll(async () => {
  await browser.close();
  await server.stop();
  remove();
});

describe.each(SCREENS)('a place on the board and three parts on $name', (screen) => {
  it('shows which fits, the best first, with a picture, and which file cannot be read', async () => {
    const walk = await BenchWalk.begin(browser, server, screen);
    await walk.goto('/drawer');
    const fit = walk.region('Does it fit?');
    await fit.getByLabel('Pads of the place on the board').setInputFiles(socket('place', 0.8));
    const bad = { name: 'bad.csv', mimeType: 'text/csv', buffer: Buffer.from('pin,x_mm\n1,2') };
    await fit.getByLabel('Parts that may go there').setInputFiles([socket('wide', 1), socket('same', 0.8), bad]);
    await fit.locator('summary').first().waitFor();
    expect(await fit.locator('summary').allInnerTexts()).toEqual(['same.kicad_mod: It fits.', 'wide.kicad_mod: It does not line up.']);
    const picture = fit.getByRole('img', { name: 'same.kicad_mod over the pads: It fits.' });
    expect(await picture.evaluate((image: HTMLImageElement) => image.complete && image.naturalWidth > 0)).toBe(true);
    expect(await fit.getByRole('alert').innerText()).toContain('bad.csv cannot be read: line 1, header has no column "y_mm"');
    await walk.expectAccessible();
    await walk.end();
  });
});
